#version 330 core
// A ring on a halo; a second ring outside it for a danger.
in vec2 v_off_px;
flat in vec3 v_look;
flat in vec3 v_ink;
uniform float px_scale;
uniform vec3 halo;
out vec4 colour;

float ring(float radius_px, float width_px) {
  return clamp(0.5 * width_px + 0.5 - abs(length(v_off_px) - radius_px), 0.0, 1.0);
}

void main() {
  float thin = 2.4 * px_scale, gap = 4.6 * px_scale;
  float inked = ring(v_look.x, thin), haloed = ring(v_look.x, 2.2 * thin);
  if (v_look.y > 1.5) {
    inked = max(inked, ring(v_look.x + gap, thin));
    haloed = max(haloed, ring(v_look.x + gap, 2.2 * thin));
  }
  float cover = max(inked, haloed);
  if (cover <= 0.0)
    discard;
  colour = vec4(mix(halo, v_ink, inked), cover * v_look.z);
}
