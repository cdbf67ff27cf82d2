#version 330 core
// Which cell of which chart is seen here.
in vec2 v_texel;
uniform usampler2D kinds;
uniform uint feature;
uniform uvec2 first_texel; // of the patch in its chart's grid
out uvec4 seen;

void main() {
  if (texture(kinds, v_texel).r == 0u)
    discard;
  uvec2 size = uvec2(textureSize(kinds, 0));
  uvec2 texel = min(uvec2(v_texel * vec2(size)), size - 1u);
  seen = uvec4(1u, feature, first_texel + texel);
}
