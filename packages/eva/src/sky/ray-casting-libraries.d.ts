// The libraries' own types ask for the DOM, which packages may not know. Only what the rays need is declared here.
declare module 'three' {
  export class Vector3 {
    x: number;
    y: number;
    z: number;
    constructor(x?: number, y?: number, z?: number);
    set(x: number, y: number, z: number): this;
  }
  export class Ray {
    origin: Vector3;
    direction: Vector3;
    constructor(origin?: Vector3, direction?: Vector3);
  }
  export class BufferAttribute {
    readonly itemSize: number;
    constructor(array: ArrayLike<number>, itemSize: number);
  }
  export class BufferGeometry {
    setAttribute(name: string, attribute: BufferAttribute): this;
  }
  export const DoubleSide: 2;
}

declare module 'three-mesh-bvh' {
  import type { BufferGeometry, Ray } from 'three';

  export interface RayHit {
    readonly distance: number;
    readonly faceIndex: number;
  }
  export class MeshBVH {
    constructor(
      geometry: BufferGeometry,
      options?: { readonly strategy?: number; readonly indirect?: boolean; readonly targetLeafSize?: number },
    );
    raycastFirst(ray: Ray, side: number, near?: number, far?: number): RayHit | null;
  }
  export const SAH: number;
  export const CENTER: number;
}
