// Light on a surface: a lamp far away, light from all round, and a gloss stretched across the lay.
uniform vec3 towards_lamp;
uniform vec3 towards_eye;      // parallel eye; with eye_is_near the eye's place counts instead
uniform vec3 eye_place;
uniform bool eye_is_near;
uniform float lamp_strength;
uniform float lamp_ambient;
uniform float lamp_highlight;

vec3 linear_from_srgb(vec3 c) {
  return mix(c / 12.92, pow((c + 0.055) / 1.055, vec3(2.4)), step(vec3(0.04045), c));
}

vec3 srgb_from_linear(vec3 c) {
  c = clamp(c, 0.0, 1.0);
  return mix(c * 12.92, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(vec3(0.0031308), c));
}

vec3 direction_to_eye(vec3 place) { return eye_is_near ? normalize(eye_place - place) : towards_eye; }

// colour: sRGB. lay: unit vector along the grain, or zero for stock without grain.
vec3 under_lamp(vec3 colour, vec3 normal, vec3 lay, vec3 place) {
  vec3 eye = direction_to_eye(place);
  float facing = max(dot(normal, towards_lamp), 0.0);
  // From all round: a little more from above and from where the eye is, so that no side drowns.
  float around = lamp_ambient * (0.6 + 0.2 * normal.z + 0.2 * max(dot(normal, eye), 0.0));
  vec3 light = linear_from_srgb(colour) * (around + (1.0 - lamp_ambient) * lamp_strength * facing);
  // Fibres along the lay send light into a cone round it (Kajiya & Kay 1989, eq. 15).
  vec3 halfway = normalize(towards_lamp + eye);
  float along = dot(lay, halfway);
  float gloss = dot(lay, lay) > 0.0 ? pow(max(1.0 - along * along, 0.0), 40.0) : 0.0;
  light += lamp_highlight * 0.35 * lamp_strength * gloss * facing;
  return srgb_from_linear(light);
}

// False colour keeps its colour where the surface faces the eye.
vec3 under_soft_light(vec3 colour, vec3 normal, vec3 place) {
  return colour * (0.72 + 0.28 * max(dot(normal, direction_to_eye(place)), 0.0));
}
