#version 330 core
// Lines with soft edges; dashed by length along the run; faint after the moment.
in float v_across;
in float v_along_mm;
in float v_time_s;
flat in int v_piece;
uniform vec4 tone;
uniform float width_px;
uniform vec2 dash_mm; // drawn, left out; 0, 0 = unbroken
uniform float moment_s;
out vec4 colour;

void main() {
  float period = dash_mm.x + dash_mm.y;
  if (period > 0.0 && mod(v_along_mm, period) > dash_mm.x)
    discard;
  float cover = clamp(0.5 * width_px + 0.5 - abs(v_across), 0.0, 1.0);
  colour = vec4(tone.rgb, tone.a * cover * (v_time_s > moment_s ? 0.22 : 1.0));
}
