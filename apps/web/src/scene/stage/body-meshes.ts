import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshStandardMaterial,
} from 'three';
import type { SceneBody, SceneMoment } from '@handrail/eva/scene/scene';
import type { Pose } from '@handrail/eva/sky/vehicle-shape';
import type { StageColours } from './stage-colours.ts';

/** The solid parts of the vehicle. Those on a joint turn with it. */
export class BodyMeshes {
  readonly group = new Group();
  private readonly parts: { readonly joint: string | null; readonly name: string; readonly holder: Group }[] = [];

  constructor(bodies: readonly SceneBody[], colours: StageColours) {
    const face = new MeshStandardMaterial({ color: colours.panel, roughness: 0.85, metalness: 0.05, side: DoubleSide });
    const edge = new LineBasicMaterial({ color: colours.soft });
    for (const body of bodies) {
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(Float32Array.from(body.trianglesM), 3));
      geometry.computeVertexNormals();
      const mesh = new Mesh(geometry, face);
      mesh.castShadow = true;
      mesh.receiveShadow = true;
      mesh.userData = { what: 'body', id: body.name };
      const holder = new Group();
      holder.matrixAutoUpdate = false;
      holder.add(mesh, new LineSegments(new EdgesGeometry(geometry, 25), edge));
      this.group.add(holder);
      this.parts.push({ joint: body.joint, name: body.name, holder });
    }
  }

  show(moment: SceneMoment): void {
    for (const { joint, holder } of this.parts) {
      const pose = joint === null ? undefined : moment.joints.get(joint);
      if (pose === undefined) holder.matrix.identity();
      else holder.matrix.copy(matrixOf(pose));
      holder.matrixWorldNeedsUpdate = true;
    }
  }

  /** Puts a model in the place of a body's stated boxes. It is drawn only: shadows of the plan rest on the boxes. */
  dress(name: string, model: Group): void {
    const part = this.parts.find((one) => one.name === name);
    if (part === undefined) return;
    part.holder.clear();
    model.traverse((child) => {
      child.castShadow = true;
      child.receiveShadow = true;
      child.userData = { what: 'body', id: name };
    });
    part.holder.add(model);
  }
}

function matrixOf({ turn, shiftM }: Pose): Matrix4 {
  const [a, b, c, d, e, f, g, h, i] = turn;
  return new Matrix4().set(a, b, c, shiftM[0], d, e, f, shiftM[1], g, h, i, shiftM[2], 0, 0, 0, 1);
}
