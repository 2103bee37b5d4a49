/** Places, people, arm tips and pieces of hardware, as marks with shapes of their own; words stand beside them as labels. */
import {
  BoxGeometry,
  CapsuleGeometry,
  ConeGeometry,
  Group,
  Mesh,
  MeshStandardMaterial,
  OctahedronGeometry,
  SphereGeometry,
  TorusGeometry,
} from 'three';
import type { SceneMoment } from '@handrail/eva/scene/scene';
import type { Vector3 } from '@handrail/quantity/vector';
import type { StageColours } from './stage-colours.ts';
import { besides } from './besides.ts';

export interface Pickable {
  readonly what: 'place' | 'person' | 'arm' | 'item';
  readonly id: string;
}

export class Marks {
  readonly group = new Group();
  private readonly byKey = new Map<string, Group>();
  private readonly colours: StageColours;
  private readonly families: readonly string[];
  private readonly people: readonly string[];

  constructor(colours: StageColours, families: readonly string[], people: readonly string[]) {
    this.colours = colours;
    this.families = families;
    this.people = people;
  }

  show(moment: SceneMoment, selected: Pickable | null): void {
    const seen = new Set<string>();
    const put = (pickable: Pickable, at: Vector3, make: () => Group): void => {
      const key = `${pickable.what}:${pickable.id}`;
      seen.add(key);
      let mark = this.byKey.get(key);
      if (mark === undefined) {
        mark = make();
        mark.traverse((child) => {
          child.userData = pickable;
        });
        this.byKey.set(key, mark);
        this.group.add(mark);
      }
      mark.position.set(...at);
      const isSelected = selected?.what === pickable.what && selected.id === pickable.id;
      mark.scale.setScalar(isSelected ? 1.6 : 1);
      mark.visible = true;
    };
    for (const place of moment.places)
      put({ what: 'place', id: place.id }, place.positionM, () => this.place(place.family, place.isKeepOut));
    for (const [index, person] of moment.people.entries()) {
      put({ what: 'person', id: person.id }, besides(person.positionM, index, 0.55), () => this.person(person.id));
    }
    for (const arm of moment.arms) if (arm.tipM !== null) put({ what: 'arm', id: arm.id }, arm.tipM, () => this.arm());
    const counts = new Map<string, number>();
    for (const item of moment.items) {
      // What a person, bag or arm holds goes with its holder; the label of the holder lists it.
      if (!item.outermost.startsWith('place:')) continue;
      const index = counts.get(item.outermost) ?? 0;
      counts.set(item.outermost, index + 1);
      put({ what: 'item', id: item.id }, besides(item.positionM, index + 2, 0.35), () => this.item());
    }
    for (const [key, mark] of this.byKey) if (!seen.has(key)) mark.visible = false;
  }

  private place(family: string, isKeepOut: boolean): Group {
    const index = Math.max(0, this.families.indexOf(family)) % this.colours.families.length;
    const color = this.colours.families[index] ?? this.colours.soft;
    const shape = isKeepOut ? new ConeGeometry(0.28, 0.5, 4) : new SphereGeometry(0.18, 16, 12);
    return grouped(new Mesh(shape, new MeshStandardMaterial({ color: isKeepOut ? this.colours.wall : color })));
  }

  /** The first is one solid figure; the second wears a ring, as it wears a double line on the chart. */
  private person(id: string): Group {
    const isFirst = this.people[0] === id;
    const material = new MeshStandardMaterial({ color: isFirst ? this.colours.first : this.colours.second });
    const figure = new Mesh(new CapsuleGeometry(0.24, 0.55, 4, 12), material);
    figure.rotation.x = Math.PI / 2;
    const group = grouped(figure);
    if (!isFirst) group.add(new Mesh(new TorusGeometry(0.42, 0.05, 8, 28), material));
    return group;
  }

  private arm(): Group {
    return grouped(new Mesh(new BoxGeometry(0.9, 0.9, 0.12), new MeshStandardMaterial({ color: this.colours.ride })));
  }

  private item(): Group {
    return grouped(new Mesh(new OctahedronGeometry(0.13), new MeshStandardMaterial({ color: this.colours.warning })));
  }
}

function grouped(mesh: Mesh): Group {
  mesh.castShadow = true;
  const group = new Group();
  group.add(mesh);
  return group;
}
