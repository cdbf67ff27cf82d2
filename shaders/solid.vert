#version 330 core
// Blank, board, bolts, cutter: plain solids.
layout(location = 0) in vec3 place;
layout(location = 1) in vec3 normal;
uniform mat4 clip_from_world;
uniform vec3 moved_by;
out vec3 v_place;
out vec3 v_normal;

void main() {
  v_place = place + moved_by;
  v_normal = normal;
  gl_Position = clip_from_world * vec4(v_place, 1.0);
}
