/** What the graphics card does: faces toned by where they look, lines of one width that show edges and contours. */

/** Faces. */
export const FACE_VERTEX = `
attribute float tone;
varying float shade;
void main() {
  vec3 light = normalize(vec3(-0.35, -0.5, 0.8));
  shade = tone + 0.1 * (1.0 - max(0.0, dot(normal, light)));
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

/** Between paper and ink. */
export const FACE_FRAGMENT = `
uniform vec3 paper;
uniform vec3 ink;
varying float shade;
void main() {
  gl_FragColor = vec4(mix(paper, ink, shade), 1.0);
}`;

/** A strip along each line; that of a round surface only where both faces beside it lie on one side, as it is seen. */
export const LINE_VERTEX = `
attribute vec3 from;
attribute vec3 to;
attribute vec3 left;
attribute vec3 right;
attribute float bend;
uniform vec2 room;
uniform float width;
vec4 seen(vec3 at) {
  return projectionMatrix * modelViewMatrix * vec4(at, 1.0);
}
void main() {
  vec4 start = seen(from);
  vec4 end = seen(to);
  vec2 scale = room * 0.5;
  vec2 along = (end.xy - start.xy) * scale;
  float far = length(along);
  along = far > 0.001 ? along / far : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);
  float sideOfLeft = dot(across, (seen(left).xy - start.xy) * scale);
  float sideOfRight = dot(across, (seen(right).xy - start.xy) * scale);
  bool hidden = bend > 0.5 && (sideOfLeft * sideOfRight <= 0.0 || far < 0.5);
  vec4 at = mix(start, end, position.x);
  at.xy += (across * position.y + along * (position.x * 2.0 - 1.0)) * width * 0.5 / scale;
  at.z -= 0.0006;
  gl_Position = hidden ? vec4(2.0, 2.0, 2.0, 1.0) : at;
}`;

/** Ink. */
export const LINE_FRAGMENT = `
uniform vec3 ink;
void main() {
  gl_FragColor = vec4(ink, 1.0);
}`;
