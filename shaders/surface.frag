#version 330 core
// A chart's surface: stock under the lamp, or false colour; normals from the chart's own cells.
#include "lamp.glsl"

in vec3 v_place;
in vec3 v_ray;
in vec3 v_along_u;
in vec3 v_along_v;
in vec2 v_texel;
in float v_uncut;

uniform sampler2D slopes;      // of the residual along u and v, cut cells only
uniform usampler2D kinds;      // r: kind of cell, g: named colour
uniform sampler2D values;      // what is shown in false colour
uniform sampler2D scale;       // one row of colours
uniform sampler2D named;       // one row of named colours

uniform float times;
uniform int colouring;         // 0 lamp, 1 scale, 2 named colours
uniform float value_low;
uniform float value_high;
uniform vec2 scale_span;       // the part of `scale` that low..high takes
uniform vec3 cut_colour;
uniform vec3 uncut_colour;
uniform vec3 skin_colour;
uniform vec3 inside_colour;
uniform float hatch_px; // width of the stripes on what is not cut, in false colour; 0 = none

out vec4 colour;

const uint kAbsent = 0u;
const uint kCut = 1u;
const uint kSkin = 3u;
const float kNoValue = -1e29;

vec3 facet_normal(vec3 outwards) {
  vec3 n = normalize(cross(dFdx(v_place), dFdy(v_place)));
  return dot(n, outwards) < 0.0 ? -n : n;
}

vec3 scale_colour(float value) {
  float t = clamp((value - value_low) / (value_high - value_low), 0.0, 1.0);
  float count = float(textureSize(scale, 0).x);
  float at = mix(scale_span.x, scale_span.y, t);
  return texture(scale, vec2((at * (count - 1.0) + 0.5) / count, 0.5)).rgb;
}

void main() {
  uvec2 cell = texture(kinds, v_texel).rg;
  if (cell.r == kAbsent)
    discard;
  vec2 slope = times * texture(slopes, v_texel).rg;
  bool is_ledge = v_uncut > 0.02 && v_uncut < 0.98;
  bool is_cut = cell.r == kCut && !is_ledge;

  vec3 u = v_along_u + slope.x * v_ray, v = v_along_v + slope.y * v_ray;
  vec3 normal = normalize(cross(u, v));
  if (dot(normal, v_ray) < 0.0)
    normal = -normal;
  vec3 lay = normalize(u);
  if (!is_cut) {
    normal = facet_normal(v_ray);
    lay = vec3(0.0);
  }

  vec3 eye = direction_to_eye(v_place);
  if (dot(normalize(v_ray), eye) < -0.02 && dot(facet_normal(v_ray), eye) < 0.0) {
    colour = vec4(under_soft_light(inside_colour, -normal, v_place), 1.0);
    return;
  }
  vec3 stock = is_cut ? cut_colour : cell.r == kSkin ? skin_colour : uncut_colour;
  // Stripes keep uncut stock apart from the scale's colours.
  if (!is_cut && hatch_px > 0.0 && fract((gl_FragCoord.x + gl_FragCoord.y) / (2.0 * hatch_px)) < 0.5)
    stock *= 0.72;
  float value = texture(values, v_texel).r;
  bool is_false = colouring != 0 && is_cut && !(colouring == 1 && value < kNoValue);
  if (!is_false) {
    colour = vec4(under_lamp(stock, normal, lay, v_place), 1.0);
    return;
  }
  vec3 shown = colouring == 1 ? scale_colour(value) : texelFetch(named, ivec2(int(cell.g), 0), 0).rgb;
  colour = vec4(under_soft_light(shown, normal, v_place), 1.0);
}
