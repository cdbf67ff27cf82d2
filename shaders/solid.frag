#version 330 core
// Plain solids under the lamp; the translucent ones are denser where seen edge on.
#include "lamp.glsl"
in vec3 v_place;
in vec3 v_normal;
uniform vec4 tone;
uniform bool is_plain; // no light: flat drawings
out vec4 colour;

void main() {
  if (is_plain) {
    colour = tone;
    return;
  }
  vec3 normal = normalize(v_normal), eye = direction_to_eye(v_place);
  if (dot(normal, eye) < 0.0)
    normal = -normal;
  float edge = 1.0 - abs(dot(normal, eye));
  float alpha = tone.a >= 1.0 ? 1.0 : tone.a * (1.0 + 1.6 * edge * edge);
  colour = vec4(under_lamp(tone.rgb, normal, vec3(0.0), v_place), min(alpha, 1.0));
}
