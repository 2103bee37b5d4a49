/** The vehicle from above and from the side, as lines: where there is no WebGL, on paper, and for who reads drawings better. */
import type { SceneMoment, SceneStage } from '@handrail/eva/scene/scene';
import { rotate } from '@handrail/eva/sky/rotation';
import type { Vector3 } from '@handrail/quantity/vector';
import styles from './vehicle-drawer.module.css';

interface PlanDrawingProps {
  readonly stage: SceneStage;
  readonly moment: SceneMoment;
  readonly families: readonly string[];
  readonly onPickPlace: (id: string) => void;
}

/** Which two axes a projection keeps, and the words for it. */
const PROJECTIONS = [
  { title: 'From above (x right, y up)', across: 0, up: 1 },
  { title: 'From the side (x right, z up)', across: 0, up: 2 },
] as const;

export function PlanDrawing(props: PlanDrawingProps) {
  return (
    <div className={styles.plans}>
      {PROJECTIONS.map((projection) => (
        <Projection key={projection.title} {...props} {...projection} />
      ))}
    </div>
  );
}

function Projection({
  stage,
  moment,
  families,
  onPickPlace,
  title,
  across,
  up,
}: PlanDrawingProps & (typeof PROJECTIONS)[number]) {
  const flat = (point: Vector3): readonly [number, number] => [point[across], -point[up]];
  const outlines = stage.bodies.map((body) => ({ name: body.name, path: triangles(body, moment, flat) }));
  const points = [
    ...moment.places.map((place) => flat(place.positionM)),
    ...outlines.flatMap(({ path }) => path.flat()),
  ];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, top] = [Math.min(0, ...xs) - 2, Math.min(0, ...ys) - 2];
  const [width, height] = [Math.max(1, ...xs) - left + 4, Math.max(1, ...ys) - top + 2];
  const line = (way: readonly Vector3[]): string => way.map((point) => flat(point).join(',')).join(' ');
  return (
    <figure className={styles.plan}>
      <figcaption>{title}</figcaption>
      <svg
        viewBox={`${left} ${top} ${width} ${height}`}
        role="img"
        aria-label={`${title}: ${moment.people.map(({ id, words }) => `${id} ${words}`).join('; ')}`}
      >
        {outlines.map(({ name, path }) => (
          <path
            key={name}
            className={styles.planBody}
            d={path.map((corners) => `M${corners.map((corner) => corner.join(' ')).join('L')}Z`).join('')}
          />
        ))}
        {moment.rails.map((rail) => (
          <polyline
            key={rail.id}
            className={rail.isOpen ? styles.planRail : styles.planClosed}
            points={line([rail.fromM, rail.toM])}
          />
        ))}
        {moment.places.map((place) => {
          const [x, y] = flat(place.positionM);
          return (
            <circle
              key={place.id}
              cx={x}
              cy={y}
              r={0.3}
              fill={`var(--family-${Math.max(0, families.indexOf(place.family)) % 8})`}
              onClick={() => onPickPlace(place.id)}
            >
              <title>{place.title}</title>
            </circle>
          );
        })}
        {moment.people.map((person, index) => {
          const [x, y] = flat(person.positionM);
          const who = index === 0 ? styles.planFirst : styles.planSecond;
          return (
            <g key={person.id} className={who}>
              {person.tetherM === null ? null : (
                <polyline className={styles.planTether} points={line(person.tetherM)} />
              )}
              <rect x={x - 0.35} y={y - 0.35} width={0.7} height={0.7} rx={index === 0 ? 0.35 : 0} />
              <text x={x + 0.6} y={y - 0.5 - index * 0.9}>
                {person.id}
              </text>
            </g>
          );
        })}
        {moment.arms.map((arm) =>
          arm.tipM === null ? null : (
            <rect
              key={arm.id}
              className={styles.planArm}
              x={flat(arm.tipM)[0] - 0.5}
              y={flat(arm.tipM)[1] - 0.5}
              width={1}
              height={1}
            >
              <title>{`${arm.title}: ${arm.words}`}</title>
            </rect>
          ),
        )}
      </svg>
    </figure>
  );
}

function triangles(
  body: SceneStage['bodies'][number],
  moment: SceneMoment,
  flat: (point: Vector3) => readonly [number, number],
): readonly (readonly (readonly [number, number])[])[] {
  const pose = body.joint === null ? undefined : moment.joints.get(body.joint);
  const numbers = Array.from(body.trianglesM);
  const corners = Array.from({ length: numbers.length / 3 }, (_, index): Vector3 => {
    const point = numbers.slice(index * 3, index * 3 + 3) as unknown as Vector3;
    if (pose === undefined) return point;
    const turned = rotate(pose.turn, point);
    return [turned[0] + pose.shiftM[0], turned[1] + pose.shiftM[1], turned[2] + pose.shiftM[2]];
  });
  return Array.from({ length: corners.length / 3 }, (_, index) => corners.slice(index * 3, index * 3 + 3).map(flat));
}
