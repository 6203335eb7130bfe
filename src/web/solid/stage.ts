/** Draws shells by WebGL: faces of paper that hide what lies behind them, lines of ink. Loaded when the view opens. */
import {
  Box3,
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  LinearSRGBColorSpace,
  Matrix4,
  Mesh,
  OrthographicCamera,
  Scene,
  ShaderMaterial,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import type { LiveShell, LiveSolid, SolidPart } from "../../tasks/live/solid.js";
import { type Axis, axesOf } from "./axes.js";
import { linesOf, normalOf } from "./lines.js";
import { FACE_FRAGMENT, FACE_VERTEX, LINE_FRAGMENT, LINE_VERTEX } from "./shaders.js";
import type { ViewPoint } from "./view-point.js";

/** Inks of the page as they are in force: `rgb(...)`. */
export interface Inks {
  readonly paper: string;
  readonly ink: string;
}

/** A place of the solid on the canvas, dots from its upper left corner; `depth`: the nearer the less. */
export interface Placed {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  readonly isAxis: boolean;
}

/** A canvas that shows a solid until it is stopped. */
export interface Stage {
  /** Another solid, or the same anew. Where nothing is in the way of the eye, `view` is kept by who calls. */
  show(solid: LiveSolid): void;
  /** How near the whole fills the canvas from there. */
  fit(view: ViewPoint): number;
  /** Draws what is shown from there; gives where its tags are. */
  draw(view: ViewPoint, inks: Inks): readonly Placed[];
  /** Gives back everything that is held of the graphics card. */
  stop(): void;
}

/** A text at a place of the solid. */
interface Label {
  readonly text: string;
  readonly at: readonly [x: number, y: number, z: number];
  /** Where the axis that it names begins; null for a tag. */
  readonly from: readonly [x: number, y: number, z: number] | null;
}

function tagsOf({ tags }: LiveSolid): readonly Label[] {
  return tags.map((tag) => ({ ...tag, from: null }));
}

/** How far each part is from paper towards ink. */
const TONES: Readonly<Record<SolidPart, number>> = {
  template: 0,
  segment: 0,
  "lower template": 0.03,
  "splice plate": 0.06,
  washer: 0.06,
  nut: 0.1,
  rod: 0.2,
};

/** On a canvas whose WebGL context is given. */
export function startStage(canvas: HTMLCanvasElement, context: WebGL2RenderingContext): Stage {
  const renderer = new WebGLRenderer({ canvas, context });
  renderer.outputColorSpace = LinearSRGBColorSpace;
  const inks = { paper: { value: new Color() }, ink: { value: new Color() } };
  const room = { value: new Vector2(1, 1) };
  const faceMaterial = new ShaderMaterial({
    uniforms: inks,
    vertexShader: FACE_VERTEX,
    fragmentShader: FACE_FRAGMENT,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
  const lineMaterial = new ShaderMaterial({
    uniforms: { ink: inks.ink, room, width: { value: 1.4 * dots() } },
    vertexShader: LINE_VERTEX,
    fragmentShader: LINE_FRAGMENT,
    side: DoubleSide,
  });
  const faces = new Mesh(new BufferGeometry(), faceMaterial);
  const lines = new Mesh<BufferGeometry>(new InstancedBufferGeometry(), lineMaterial);
  for (const each of [faces, lines]) each.frustumCulled = false;
  const scene = new Scene().add(faces, lines);
  const camera = new OrthographicCamera();
  let shown: (Body & { readonly labels: readonly Label[] }) | null = null;
  const shape = (): number => Math.max(1, canvas.clientWidth) / Math.max(1, canvas.clientHeight);
  return {
    show: (solid) => {
      for (const each of [faces, lines]) each.geometry.dispose();
      faces.geometry = facesOf(solid.shells);
      const axes = axesOf(solid);
      lines.geometry = lineGeometry(solid.shells, axes);
      const labels = [...axes.map(({ text, stroke: [from, at] }) => ({ text, from, at })), ...tagsOf(solid)];
      shown = { labels, ...bodyOf(solid.shells) };
    },
    fit: (view) => (shown === null ? 1 : fitting(view, shown, shape())),
    draw: (view, { paper, ink }) => {
      if (shown === null) return [];
      inks.paper.value.copy(colorOf(paper));
      inks.ink.value.copy(colorOf(ink));
      renderer.setClearColor(inks.paper.value);
      const { clientWidth: width, clientHeight: height } = canvas;
      renderer.setPixelRatio(dots());
      renderer.setSize(width, height, false);
      room.value.set(width * dots(), height * dots());
      stand(camera, view, shown, shape());
      renderer.render(scene, camera);
      return shown.labels.map((label) => placed(label, camera, width, height));
    },
    stop: () => {
      for (const each of [faces, lines]) each.geometry.dispose();
      faceMaterial.dispose();
      lineMaterial.dispose();
      renderer.dispose();
    },
  };
}

/** Dots of the screen to one of the page; more than two cost much and show nothing. */
function dots(): number {
  return Math.min(2, window.devicePixelRatio || 1);
}

/** As it is written, no colour space applied. */
function colorOf(css: string): Color {
  const [red = 0, green = 0, blue = 0] = (css.match(/[\d.]+/g) ?? []).map(Number);
  return new Color(red / 255, green / 255, blue / 255);
}

function facesOf(shells: readonly LiveShell[]): BufferGeometry {
  const count = shells.reduce((sum, { triangles }) => sum + triangles.length, 0);
  const [position, normal, tone] = [new Float32Array(3 * count), new Float32Array(3 * count), new Float32Array(count)];
  let at = 0;
  for (const { corners, triangles, part } of shells)
    for (let first = 0; first < triangles.length; first += 3) {
      const [a = 0, b = 0, c = 0] = triangles.subarray(first, first + 3);
      const outward = normalOf(corners, a, b, c);
      for (const corner of [a, b, c]) {
        position.set(corners.subarray(3 * corner, 3 * corner + 3), 3 * at);
        normal.set(outward, 3 * at);
        tone[at] = TONES[part];
        at += 1;
      }
    }
  return new BufferGeometry()
    .setAttribute("position", new BufferAttribute(position, 3))
    .setAttribute("normal", new BufferAttribute(normal, 3))
    .setAttribute("tone", new BufferAttribute(tone, 1));
}

/** A strip a line: along it 0 or 1, across it -1 or 1. */
const STRIP = Float32Array.from([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, -1, 0, 1, 1, 0, 0, 1, 0]);

function lineGeometry(shells: readonly LiveShell[], axes: readonly Axis[]): InstancedBufferGeometry {
  const strokes = axes.map(({ stroke }) => stroke);
  const { from, to, left, right, round } = linesOf(shells, strokes);
  const geometry = new InstancedBufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(STRIP, 3));
  for (const [name, values] of Object.entries({ from, to, left, right }))
    geometry.setAttribute(name, new InstancedBufferAttribute(values, 3));
  geometry.setAttribute("bend", new InstancedBufferAttribute(round, 1));
  geometry.instanceCount = round.length;
  return geometry;
}

/** The box around all, by its middle; `radius` to its corners. */
interface Body {
  readonly middle: Vector3;
  readonly half: Vector3;
  readonly radius: number;
}

function bodyOf(shells: readonly LiveShell[]): Body {
  const box = new Box3();
  const corner = new Vector3();
  for (const { corners } of shells)
    for (let i = 0; i < corners.length; i += 3) box.expandByPoint(corner.fromArray(corners, i));
  if (box.isEmpty()) box.expandByPoint(corner.set(0, 0, 0));
  const half = box.getSize(new Vector3()).multiplyScalar(0.5);
  return { half, middle: box.getCenter(new Vector3()), radius: Math.max(1, half.length()) };
}

/** Axes of the screen: to the right, up, and towards the eye. */
function axesOfScreen({ around, above }: ViewPoint): readonly [Vector3, Vector3, Vector3] {
  const [turn, tilt] = [(around * Math.PI) / 180, (above * Math.PI) / 180];
  const eye = new Vector3(Math.sin(turn) * Math.cos(tilt), -Math.cos(turn) * Math.cos(tilt), Math.sin(tilt));
  const right = new Vector3(Math.cos(turn), Math.sin(turn), 0);
  return [right, new Vector3().crossVectors(eye, right), eye];
}

/** Room around the whole, as a share of it: tags and axes stand there. */
const ROOM = 1.16;

/** Half of what the canvas is high at zoom 1, millimetres: that of the sphere around the box. */
function halfHeight({ radius }: Body, shape: number): number {
  return (ROOM * radius) / Math.min(1, shape);
}

function fitting(view: ViewPoint, body: Body, shape: number): number {
  const [right, up] = axesOfScreen(view);
  const along = ({ x, y, z }: Vector3): number =>
    Math.abs(x) * body.half.x + Math.abs(y) * body.half.y + Math.abs(z) * body.half.z;
  return halfHeight(body, shape) / (ROOM * Math.max(1, along(up), along(right) / shape));
}

function stand(camera: OrthographicCamera, view: ViewPoint, body: Body, shape: number): void {
  const [right, up, eye] = axesOfScreen(view);
  camera.quaternion.setFromRotationMatrix(new Matrix4().makeBasis(right, up, eye));
  camera.position.copy(body.middle).addScaledVector(eye, 4 * body.radius);
  const half = halfHeight(body, shape) / view.zoom;
  const [x, y] = [half * shape, half];
  camera.left = -x - 2 * x * view.right;
  camera.right = x - 2 * x * view.right;
  camera.bottom = -y - 2 * y * view.up;
  camera.top = y - 2 * y * view.up;
  camera.near = body.radius;
  camera.far = 7 * body.radius;
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

/** The name of an axis that points at the eye is out of sight. */
function placed({ text, at, from }: Label, camera: OrthographicCamera, width: number, height: number): Placed {
  const dots = (place: Label["at"]): Vector3 => {
    const { x, y, z } = new Vector3().fromArray(place).project(camera);
    return new Vector3(((x + 1) / 2) * width, ((1 - y) / 2) * height, z);
  };
  const { x, y, z } = dots(at);
  const start = from && dots(from);
  const isHidden = start !== null && Math.hypot(x - start.x, y - start.y) < SHORT;
  return { text, x: isHidden ? -1 : x, y, depth: z, isAxis: from !== null };
}

/** An axis that is seen no longer than this has no name, dots. */
const SHORT = 12;
