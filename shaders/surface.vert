#version 330 core
// A chart's surface: moved along its ray by the exaggerated residual, in space or laid flat.
layout(location = 0) in vec3 place;
layout(location = 1) in vec3 ray;
layout(location = 2) in vec3 along_u;
layout(location = 3) in vec3 along_v;
layout(location = 4) in vec2 sheet;
layout(location = 5) in vec2 texel;
layout(location = 6) in float residual_mm;
layout(location = 7) in float uncut;

uniform mat4 clip_from_world;
uniform bool is_flat;
uniform float sheet_sign; // -1: s runs to the left
uniform float times;
uniform float farthest_mm;

out vec3 v_place;
out vec3 v_ray;
out vec3 v_along_u;
out vec3 v_along_v;
out vec2 v_texel;
out float v_uncut;

void main() {
  float shift = clamp(uncut > 0.5 ? residual_mm : residual_mm * times, -farthest_mm, farthest_mm);
  v_ray = is_flat ? vec3(0.0, 0.0, 1.0) : ray;
  v_along_u = is_flat ? vec3(sheet_sign, 0.0, 0.0) : along_u;
  v_along_v = is_flat ? vec3(0.0, 1.0, 0.0) : along_v;
  v_place = (is_flat ? vec3(sheet, 0.0) : place) + shift * v_ray;
  v_texel = texel;
  v_uncut = uncut;
  gl_Position = clip_from_world * vec4(v_place, 1.0);
}
