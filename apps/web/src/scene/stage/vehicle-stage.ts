/**
 * The drawing of the vehicle: bodies, ways, marks, light, camera. It draws when something has changed and rests otherwise.
 * Outside React: the drawer tells it what moment to show and listens to what is picked.
 */
import {
  Box3,
  BufferGeometry,
  Float32BufferAttribute,
  type Group,
  Line,
  LineBasicMaterial,
  type Object3D,
  PCFSoftShadowMap,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Sphere,
  Vector2,
  Vector3 as Point,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { SceneMoment, SceneStage } from '@handrail/eva/scene/scene';
import type { Vector3 } from '@handrail/quantity/vector';
import { BodyMeshes } from './body-meshes.ts';
import { Labels } from './labels.ts';
import { Marks, type Pickable } from './marks.ts';
import type { StageColours } from './stage-colours.ts';
import { SunLamp } from './sun-lamp.ts';
import { Ways } from './ways.ts';

export interface StageParts {
  readonly canvas: HTMLCanvasElement;
  readonly labels: HTMLElement;
  readonly colours: StageColours;
  readonly stage: SceneStage;
  readonly first: SceneMoment;
  readonly families: readonly string[];
  readonly people: readonly string[];
  readonly onPick: (picked: Pickable | null, at: Vector3 | null) => void;
}

export class VehicleStage {
  private readonly bodies: BodyMeshes;
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(42, 1, 0.1, 2000);
  private readonly controls: OrbitControls;
  private readonly marks: Marks;
  private readonly ways: Ways;
  private readonly lamp: SunLamp;
  private readonly labels: Labels;
  private readonly tape: Line;
  private readonly round: Sphere;
  private readonly parts: StageParts;
  private moment: SceneMoment;
  private selected: Pickable | null = null;
  private due = 0;
  private pressed = new Vector2();

  /** @throws Error where the browser gives no WebGL: the caller then shows the plan drawing */
  constructor(parts: StageParts) {
    this.parts = parts;
    const { canvas, colours, stage, first } = parts;
    this.moment = first;
    this.renderer = new WebGLRenderer({ canvas, antialias: true });
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    this.renderer.shadowMap.enabled = true;
    this.renderer.shadowMap.type = PCFSoftShadowMap;
    this.scene.background = colours.paper;
    this.bodies = new BodyMeshes(stage.bodies, colours);
    this.marks = new Marks(colours, parts.families, parts.people);
    this.ways = new Ways(colours, parts.people);
    this.labels = new Labels(parts.labels);
    this.tape = new Line(new BufferGeometry(), new LineBasicMaterial({ color: colours.focus }));
    this.tape.visible = false;
    this.scene.add(this.bodies.group, this.marks.group, this.ways.group, this.tape);
    this.round = extent(this.bodies.group, first);
    const { x, y, z } = this.round.center;
    this.lamp = new SunLamp([x, y, z], this.round.radius);
    this.scene.add(this.lamp.group);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.addEventListener('change', this.redraw);
    this.lookAtAll();
    canvas.addEventListener('pointerdown', this.onPress);
    canvas.addEventListener('pointerup', this.onRelease);
    this.show(first);
  }

  show(moment: SceneMoment): void {
    this.moment = moment;
    this.bodies.show(moment);
    this.ways.show(moment);
    this.marks.show(moment, this.selected);
    this.lamp.show(moment);
    this.redraw();
  }

  /** A drawing in the place of a body's boxes. */
  dress(body: string, model: Group): void {
    this.bodies.dress(body, model);
    this.redraw();
  }

  select(selected: Pickable | null): void {
    this.selected = selected;
    this.marks.show(this.moment, selected);
    this.redraw();
  }

  /** The measured line; null takes it away. */
  measure(ends: readonly [Vector3, Vector3] | null): void {
    this.tape.visible = ends !== null;
    if (ends !== null) {
      this.tape.geometry.dispose();
      this.tape.geometry = new BufferGeometry();
      this.tape.geometry.setAttribute(
        'position',
        new Float32BufferAttribute(
          ends.flatMap((end) => [...end]),
          3,
        ),
      );
    }
    this.redraw();
  }

  lookAtAll(): void {
    const { center, radius } = this.round;
    this.look(
      [center.x + radius * 0.9, center.y + radius * 1.5, center.z + radius * 1.1],
      [center.x, center.y, center.z],
    );
  }

  /** From where a place states, or from a step up and outward. */
  lookAtPlace(id: string): void {
    const place = this.moment.places.find((one) => one.id === id);
    if (place === undefined) return;
    const [x, y, z] = place.positionM;
    const out = new Point(x, y, z).sub(this.round.center).setZ(0);
    const away = out.lengthSq() < 1e-6 ? new Point(1, 1, 0) : out;
    away.normalize().multiplyScalar(6);
    this.look(place.seenFromM ?? [x + away.x, y + away.y, z + 5], place.positionM);
  }

  look(fromM: Vector3, atM: Vector3): void {
    this.camera.position.set(...fromM);
    this.controls.target.set(...atM);
    this.controls.update();
    this.redraw();
  }

  /** Where the camera stands now. */
  standsAt(): Vector3 {
    const { x, y, z } = this.camera.position;
    return [x, y, z];
  }

  /** Turns and zooms by keys, in steps. */
  turn(aroundRad: number, upRad: number, nearer: number): void {
    const offset = this.camera.position.clone().sub(this.controls.target);
    offset.applyAxisAngle(this.camera.up, aroundRad);
    const side = new Point().crossVectors(this.camera.up, offset).normalize();
    offset.applyAxisAngle(side, -upRad).multiplyScalar(nearer);
    this.camera.position.copy(this.controls.target).add(offset);
    this.controls.update();
    this.redraw();
  }

  resize(widthPx: number, heightPx: number): void {
    this.renderer.setSize(widthPx, heightPx, false);
    this.camera.aspect = widthPx / Math.max(1, heightPx);
    this.camera.updateProjectionMatrix();
    this.redraw();
  }

  dispose(): void {
    cancelAnimationFrame(this.due);
    this.controls.dispose();
    this.parts.canvas.removeEventListener('pointerdown', this.onPress);
    this.parts.canvas.removeEventListener('pointerup', this.onRelease);
    this.renderer.dispose();
  }

  private readonly redraw = (): void => {
    if (this.due !== 0) return;
    this.due = requestAnimationFrame(() => {
      this.due = 0;
      this.renderer.render(this.scene, this.camera);
      const { clientWidth, clientHeight } = this.parts.canvas;
      const place = this.selected?.what === 'place' ? this.selected.id : null;
      this.labels.show(this.moment, this.camera, clientWidth, clientHeight, place);
    });
  };

  private readonly onPress = (event: PointerEvent): void => {
    this.pressed.set(event.clientX, event.clientY);
  };

  private readonly onRelease = (event: PointerEvent): void => {
    // A turn of the view is not a pick.
    if (this.pressed.distanceTo(new Vector2(event.clientX, event.clientY)) > 4) return;
    const box = this.parts.canvas.getBoundingClientRect();
    const ray = new Raycaster();
    const x = ((event.clientX - box.left) / box.width) * 2 - 1;
    const y = 1 - ((event.clientY - box.top) / box.height) * 2;
    ray.setFromCamera(new Vector2(x, y), this.camera);
    const hits = ray
      .intersectObjects([this.marks.group, this.bodies.group], true)
      .filter(({ object }) => isShown(object));
    const hit = hits.find(({ object }) => 'what' in object.userData);
    const what = hit?.object.userData as Pickable | { readonly what: 'body' } | undefined;
    const at = hit === undefined ? null : ([hit.point.x, hit.point.y, hit.point.z] as const);
    this.parts.onPick(what === undefined || what.what === 'body' ? null : what, at);
  };
}

function isShown(object: Object3D): boolean {
  for (let one: Object3D | null = object; one !== null; one = one.parent) if (!one.visible) return false;
  return true;
}

function extent(bodies: Object3D, moment: SceneMoment): Sphere {
  const box = new Box3().setFromObject(bodies);
  for (const place of moment.places) box.expandByPoint(new Point(...place.positionM));
  if (box.isEmpty()) box.expandByPoint(new Point(0, 0, 0)).expandByScalar(5);
  return box.getBoundingSphere(new Sphere());
}
