/** The drawing in three dimensions, or, where the browser has no WebGL, its place taken by the plan drawing. */
import type { SceneMoment } from '@handrail/eva/scene/scene';
import type { VehicleScene } from '@handrail/eva/scene/vehicle-scene';
import type { Vector3 } from '@handrail/quantity/vector';
import { type RefObject, useEffect, useRef } from 'react';
import { useSession } from '../views/shell/use-stores.ts';
import { stageColours } from './stage/stage-colours.ts';
import type { Pickable } from './stage/marks.ts';
import { VehicleStage } from './stage/vehicle-stage.ts';
import styles from './vehicle-drawer.module.css';

interface VehiclePictureProps {
  readonly scene: VehicleScene;
  readonly moment: SceneMoment;
  readonly families: readonly string[];
  readonly people: readonly string[];
  readonly stage: RefObject<VehicleStage | null>;
  readonly onPick: (picked: Pickable | null, at: Vector3 | null) => void;
  readonly onNoWebGl: () => void;
  /** The drawing stands: what dresses it may come. */
  readonly onReady: () => void;
}

/** A step of the view by keys. */
const TURN_RAD = 0.12;

export function VehiclePicture({
  scene,
  moment,
  families,
  people,
  stage,
  onPick,
  onNoWebGl,
  onReady,
}: VehiclePictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const labels = useRef<HTMLDivElement>(null);
  const theme = useSession((state) => state.theme);
  const latest = useRef({ moment, onPick, onReady });
  latest.current = { moment, onPick, onReady };

  useEffect(() => {
    const [drawing, words] = [canvas.current, labels.current];
    if (drawing === null || words === null) return;
    let made: VehicleStage;
    try {
      made = new VehicleStage({
        canvas: drawing,
        labels: words,
        colours: stageColours(words),
        stage: scene.stage,
        first: latest.current.moment,
        families,
        people,
        onPick: (picked, at) => latest.current.onPick(picked, at),
      });
    } catch {
      onNoWebGl();
      return;
    }
    stage.current = made;
    latest.current.onReady();
    const watch = new ResizeObserver(() => made.resize(drawing.clientWidth, drawing.clientHeight));
    watch.observe(drawing);
    return () => {
      watch.disconnect();
      made.dispose();
      words.replaceChildren();
      stage.current = null;
    };
  }, [scene, families, people, theme, stage, onNoWebGl]);

  const turn: Readonly<Record<string, readonly [number, number, number]>> = {
    ArrowLeft: [TURN_RAD, 0, 1],
    ArrowRight: [-TURN_RAD, 0, 1],
    ArrowUp: [0, TURN_RAD, 1],
    ArrowDown: [0, -TURN_RAD, 1],
    '+': [0, 0, 0.85],
    '-': [0, 0, 1.18],
  };
  return (
    <div className={styles.picture}>
      <canvas
        ref={canvas}
        className="keeps-arrows"
        tabIndex={0}
        role="img"
        aria-label={`The vehicle: ${moment.people.map(({ id, words }) => `${id} ${words}`).join('; ')}. Arrows turn the view, plus and minus come nearer and go away; the table below says the same.`}
        onKeyDown={(event) => {
          const step = turn[event.key];
          if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
          event.preventDefault();
          event.stopPropagation();
          stage.current?.turn(...step);
        }}
      />
      <div ref={labels} className={styles.labels} aria-hidden="true" />
    </div>
  );
}
