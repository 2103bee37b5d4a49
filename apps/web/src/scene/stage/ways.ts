/** Lines of the drawing: rails, tethers, the route under way. */
import {
  BufferGeometry,
  Float32BufferAttribute,
  Group,
  Line,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
} from 'three';
import type { SceneMoment } from '@handrail/eva/scene/scene';
import type { Vector3 } from '@handrail/quantity/vector';
import type { StageColours } from './stage-colours.ts';

export class Ways {
  readonly group = new Group();
  private readonly open: LineSegments;
  private readonly closed: LineSegments;
  private readonly tethers = new Map<string, Line>();
  private readonly routes = new Map<string, Line>();
  private readonly colours: StageColours;
  private readonly people: readonly string[];

  /** @param people ids in the order of the campaign: the first is drawn solid, the others dashed. */
  constructor(colours: StageColours, people: readonly string[]) {
    this.colours = colours;
    this.people = people;
    this.open = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: colours.ink }));
    this.closed = new LineSegments(
      new BufferGeometry(),
      new LineDashedMaterial({ color: colours.wall, dashSize: 0.25, gapSize: 0.25 }),
    );
    this.group.add(this.open, this.closed);
  }

  show(moment: SceneMoment): void {
    const pairs = (isOpen: boolean): number[] =>
      moment.rails.filter((rail) => rail.isOpen === isOpen).flatMap((rail) => [...rail.fromM, ...rail.toM]);
    draw(this.open, pairs(true));
    draw(this.closed, pairs(false));
    this.closed.computeLineDistances();
    for (const person of moment.people) {
      draw(this.lineOf(this.tethers, person.id, 'tether'), flat(person.tetherM ?? []));
      const route = this.lineOf(this.routes, person.id, 'route');
      draw(route, flat(person.routeM));
      route.computeLineDistances();
    }
  }

  private lineOf(lines: Map<string, Line>, person: string, what: 'tether' | 'route'): Line {
    let line = lines.get(person);
    if (line === undefined) {
      const color = this.people[0] === person ? this.colours.first : this.colours.second;
      const material =
        what === 'tether' && this.people[0] === person
          ? new LineBasicMaterial({ color })
          : new LineDashedMaterial({
              color,
              dashSize: what === 'route' ? 0.6 : 0.3,
              gapSize: what === 'route' ? 0.3 : 0.12,
            });
      line = new Line(new BufferGeometry(), material);
      lines.set(person, line);
      this.group.add(line);
    }
    return line;
  }
}

function draw(line: Line | LineSegments, coordinates: readonly number[]): void {
  line.geometry.dispose();
  line.geometry = new BufferGeometry();
  line.geometry.setAttribute('position', new Float32BufferAttribute(coordinates as number[], 3));
  line.visible = coordinates.length > 3;
  if (line.visible && line.material instanceof LineDashedMaterial) line.computeLineDistances();
}

function flat(points: readonly Vector3[]): number[] {
  return points.flatMap((point) => [...point]);
}
