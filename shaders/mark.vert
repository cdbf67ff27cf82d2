#version 330 core
// A finding's ring, of fixed size in pixels.
layout(location = 0) in vec2 middle_px; // from the upper left corner
layout(location = 1) in vec3 look;      // radius px, rings, alpha
layout(location = 2) in vec3 ink;
uniform vec2 picture_px;
uniform float px_scale;
out vec2 v_off_px;
flat out vec3 v_look;
flat out vec3 v_ink;

void main() {
  vec2 corner = vec2(gl_VertexID % 2 == 0 ? -1.0 : 1.0, gl_VertexID < 2 ? -1.0 : 1.0);
  v_off_px = corner * (look.x + 8.0 * px_scale);
  v_look = look;
  v_ink = ink;
  vec2 at = (middle_px + v_off_px) / picture_px;
  gl_Position = vec4(2.0 * at.x - 1.0, 1.0 - 2.0 * at.y, 0.0, 1.0);
}
