#version 330 core
// Lines of a given width in pixels: every stretch is a strip of four corners.
layout(location = 0) in vec3 begin;
layout(location = 1) in vec3 end;
layout(location = 2) in vec3 along_time_piece; // mm from the start of the run, s, index of the piece
uniform mat4 clip_from_world;
uniform vec2 picture_px;
uniform float width_px;
uniform float nearer; // share of the depth range towards the eye, so that a surface does not cover its lines
uniform int chosen_piece;
uniform bool only_chosen;
out float v_across; // px from the middle
out float v_along_mm;
out float v_time_s;
flat out int v_piece;

void main() {
  v_piece = int(along_time_piece.z + 0.5);
  vec4 a = clip_from_world * vec4(begin, 1.0), b = clip_from_world * vec4(end, 1.0);
  bool is_end = gl_VertexID >= 2;
  vec2 way = (b.xy / b.w - a.xy / a.w) * picture_px;
  vec2 side = dot(way, way) > 1e-12 ? normalize(vec2(-way.y, way.x)) : vec2(0.0, 1.0);
  vec2 on = dot(way, way) > 1e-12 ? normalize(way) : vec2(1.0, 0.0);
  float half_px = 0.5 * width_px + 0.5;
  float sign_across = (gl_VertexID % 2 == 0) ? -1.0 : 1.0;
  v_across = sign_across * half_px;
  v_along_mm = along_time_piece.x + (is_end ? distance(begin, end) : 0.0);
  v_time_s = along_time_piece.y;
  vec4 at = is_end ? b : a;
  vec2 off = side * v_across + on * (is_end ? 0.3 : -0.3) * width_px;
  gl_Position = at + vec4(2.0 * off / picture_px * at.w, -nearer * at.w, 0.0);
  if (a.w <= 0.0 || b.w <= 0.0 || (only_chosen && v_piece != chosen_piece))
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
}
