// What the trade's words mean.
#include "words.h"

#include <utility>

namespace asperity {

namespace {

constexpr std::pair<std::string_view, std::string_view> kWords[] = {
    {"base lip", "A thin ledge of stock left standing at the foot of a wall, where the last pass does not "
                 "reach down to the board or the cutter bends away."},
    {"witness line", "A line that can be seen and often felt, where two cuts meet or where the cutter stood "
                     "and sprang back into the wall."},
    {"level step",
     "A small step between two levels of a wall: the tip of the cutter bends away more than the "
     "flute above it."},
    {"scallop", "The hollow that one pass of a rounded cutter leaves. Its height is from the bottom to the "
                "ridge (cusp) between two hollows."},
    {"uncut skin", "Surface of the blank that no pass reaches: the blank is too small there."},
    {"gouge", "Cut below the wanted surface."},
    {"spoilboard cut", "The cutter goes deeper into the sacrificial board below than allowed."},
    {"keep-out touched", "The path runs through a bolt, a clamp or another thing that must not be touched."},
    {"rapid in stock", "A rapid move runs through material."},
    {"rubbing", "The chip is thinner than the edge is round: the edge smears instead of cutting."},
    {"overheating", "The chip would grow hotter than the material bears: it smears or melts."},
    {"blank may break", "The cutting force bends the blank beyond what it bears."},
    {"hold-down may slip", "The cutting force is larger than clamping and friction hold."},
    {"cutter overloaded", "The force would bend the cutter beyond what its material bears."},
    {"Ra", "Mean height of a roughness profile above and below its mean line [ISO 21920-2]."},
    {"Rz", "Highest peak plus deepest valley of a section, averaged over the sections [ISO 21920-2]."},
    {"cutoff", "Longest wavelength that counts as roughness; longer ones are waviness or form."},
    {"residual", "What is left above the wanted surface, measured along its own normal: positive is stock "
                 "left standing, negative is cut too deep."},
    {"lay", "Direction of the dominant grain of a surface."},
    {"chip load", "Feed per tooth: how far the work moves while one tooth comes round."},
    {"runout", "Total indicator reading of the teeth about the spindle's axis."},
    {"bending", "How far the tip is pushed off its path by the cutting force: machine, cutter and blank."},
    {"exaggeration",
     "Residuals are drawn so many times larger than they are, in shape and shading. Stock left "
     "standing keeps its true size."},
    {"roundness", "Largest minus smallest radius about the least-squares centre."},
    {"taper", "Size at the bottom of the wall minus size at its top."},
    {"level", "One pass round at one height; the stepdown lies between two."},
    {"raking lamp", "A lamp that stands low over the surface: small steps throw long shadows."},
};

} // namespace

std::string_view meaning_of(std::string_view word) {
  for (const auto &[name, meaning] : kWords)
    if (name == word)
      return meaning;
  return {};
}

} // namespace asperity
