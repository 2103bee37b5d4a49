import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { giveStint } from '@handrail/eva/timeline/edit/give-stint';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { formatPet } from '@handrail/quantity/time';
import { useEffect, useMemo, useRef, useState } from 'react';
import { editPlan, otherOutside } from '../../actions/stint-actions.ts';
import { derivedStore } from '../../derived/derived-store.ts';
import { documentStore } from '../../document/document-store.ts';
import type { ChartHands, ChartMode, DragShown } from '../../modes/chart-mode.ts';
import { press, resting } from '../../modes/resting.ts';
import { look, sessionStore, tell } from '../../session/session-store.ts';
import { checkingWorker } from '../../workers/connect.ts';
import { usePlanRun, useSession } from '../shell/use-stores.ts';
import { chartColours, type ChartColours } from './chart-colours.ts';
import { type StintBox, stintAt, stintBoxes } from './chart-hit.ts';
import { drawChart } from './draw-chart.ts';
import styles from './home-chart.module.css';
import { scaleOf, showing, type Viewport, wholeOf, zoomed, panned } from './viewport.ts';
import { StintTargets } from './stint-targets.tsx';
import { useMarks } from './use-marks.ts';

/** A join, a window's edge or another stint's end draws a dragged stint to itself within this many seconds. */
const SNAP_S = 90;
const CELL_S = 10;

interface HomeChartProps {
  readonly data: HomeChartData;
  readonly isStale: boolean;
}

export function HomeChart({ data, isStale }: HomeChartProps) {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ width: 800, height: 420 });
  const [viewport, setViewport] = useState<Viewport>(() => wholeOf(data));
  const [colours, setColours] = useState<ChartColours | null>(null);
  const [drag, setDrag] = useState<(DragShown & { readonly words: string }) | null>(null);
  const [hovered, setHovered] = useState<{ readonly box: StintBox; readonly x: number; readonly y: number } | null>(
    null,
  );
  const mode = useRef<ChartMode>(resting());
  const theme = useSession((state) => state.theme);
  const selection = useSession((state) => state.selection);
  const offered = usePlanRun((state) => state.judged?.evas.get(data.eva.eva)?.chart ?? null);
  const marks = useMarks(data, offered, isStale);

  useEffect(() => setViewport(wholeOf(data)), [data.eva.eva]);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const watch = new ResizeObserver(([entry]) => {
      const box = entry?.contentRect;
      if (box !== undefined) setSize({ width: Math.round(box.width), height: Math.round(box.height) });
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  useEffect(() => {
    const read = (): void => {
      if (frame.current !== null) setColours(chartColours(frame.current));
    };
    read();
    const dark = matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', read);
    return () => dark.removeEventListener('change', read);
  }, [theme]);

  const scale = useMemo(() => scaleOf(data, viewport, size.width, size.height), [data, viewport, size]);
  const boxes = useMemo(() => stintBoxes(data, scale), [data, scale]);
  const chosen = boxes.find(({ stint }) => stint === marks.selectedStint);

  useEffect(() => {
    const due = requestAnimationFrame(() => {
      const element = canvas.current;
      const pen = element?.getContext('2d');
      if (element === null || pen == null || colours === null) return;
      const ratio = window.devicePixelRatio || 1;
      if (element.width !== size.width * ratio || element.height !== size.height * ratio) {
        element.width = size.width * ratio;
        element.height = size.height * ratio;
      }
      pen.setTransform(ratio, 0, 0, ratio, 0, 0);
      drawChart(pen, data, scale, marks, colours);
      element.dataset.drawn = String(boxes.length);
    });
    return () => cancelAnimationFrame(due);
  }, [data, scale, marks, colours, size, boxes.length]);

  // A stint chosen by key or from a list comes into view.
  useEffect(() => {
    if (selection?.what !== 'stint') return;
    const planned = data.eva.stints.find(({ stint }) => stint === selection.id);
    if (planned !== undefined) setViewport((was) => showing(was, wholeOf(data), planned.startS, planned.endS));
  }, [selection, data]);

  const latest = useRef({ scale, boxes, data });
  latest.current = { scale, boxes, data };

  const hands = useMemo<ChartHands>(() => {
    let asked = 0;
    return {
      scale: () => latest.current.scale,
      boxAt: ({ x, y }) => stintAt(latest.current.boxes, x, y),
      select: (stint) => look({ selection: stint === null ? null : { what: 'stint', id: stint } }),
      setMinute: (petS) => look({ minuteS: Math.round(petS / 60) * 60 }),
      panBy: (seconds) => setViewport((was) => panned(was, wholeOf(latest.current.data), seconds)),
      otherOf: otherOutside,
      snap: (petS, stint) => snapped(latest.current.data, petS, stint),
      showDrag: (shown) => {
        if (shown === null) {
          asked++;
          setDrag(null);
          return;
        }
        setDrag((was) => ({ ...shown, words: was?.words ?? 'checking' }));
        const mine = ++asked;
        void liveCheck(shown).then((words) => {
          if (mine === asked) setDrag((was) => (was === null ? null : { ...was, words }));
        });
      },
      drop: (shown) => {
        const { box } = shown;
        const began = performance.now();
        editPlan(`Move ${box.title}`, (ground, timeline) => {
          const moved = moveStint({ stint: box.stint, startS: shown.startS, pushesLater: false })(ground, timeline);
          return shown.to === box.person
            ? moved
            : giveStint({ stint: box.stint, from: box.person, to: shown.to })(ground, moved);
        });
        look({ selection: { what: 'stint', id: box.stint }, minuteS: shown.startS });
        const { revision } = documentStore.getState();
        const stop = derivedStore.subscribe(({ judged }) => {
          if (judged.revision < revision || judged.value === null) return;
          stop();
          const tookMs = Math.round(performance.now() - began);
          const errors = judged.value.findings.filter(({ severity }) => severity === 'error').length;
          if (frame.current !== null) frame.current.dataset.checkedMs = String(tookMs);
          tell(
            `${box.title} starts at PET ${formatPet(shown.startS)}${shown.to === box.person ? '' : `, by ${shown.to}`}: ${errors === 0 ? 'nothing breaks in the replay' : `${errors} ${errors === 1 ? 'error' : 'errors'}`}`,
          );
        });
      },
    };
  }, []);

  const placeOf = (event: React.PointerEvent): { x: number; y: number } => {
    const box = canvas.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const whole = wholeOf(latest.current.data);
      const aboutS = latest.current.scale.petAt(event.clientX - element.getBoundingClientRect().left);
      if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        const span = latest.current.scale.viewport.toS - latest.current.scale.viewport.fromS;
        const delta = event.deltaX === 0 ? event.deltaY : event.deltaX;
        setViewport((was) => panned(was, whole, (delta / element.clientWidth) * span));
      } else setViewport((was) => zoomed(was, whole, aboutS, Math.exp(event.deltaY / 400)));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && mode.current.name !== 'resting') {
        event.preventDefault();
        event.stopPropagation();
        mode.current = mode.current.cancel();
        tell('Dropped nothing: it stays where it was');
      }
    };
    window.addEventListener('keydown', onKey, true);
    return () => {
      element.removeEventListener('wheel', onWheel);
      window.removeEventListener('keydown', onKey, true);
    };
  }, []);

  const zoomBy = (factor: number): void =>
    setViewport((was) => zoomed(was, wholeOf(data), sessionStore.getState().minuteS, factor));

  return (
    <>
      <div className={styles.legend}>
        <span>
          {data.lanes[0]?.person ?? ''} solid
          {data.lanes[1] === undefined ? '' : `, ${data.lanes[1].person} double`}
        </span>
        <span>post: way home, dashed unknown</span>
        <span>wide tone: no safe stop in reach</span>
        <span style={{ flex: 1 }} />
        <button type="button" onClick={() => zoomBy(0.7)} aria-label="Zoom in">
          +
        </button>
        <button type="button" onClick={() => zoomBy(1.4)} aria-label="Zoom out">
          −
        </button>
        <button type="button" onClick={() => setViewport(wholeOf(data))}>
          Whole
        </button>
      </div>
      {/* oxlint-disable-next-line */}
      <div ref={frame} className={`${styles.chart} ${isStale ? styles.stale : ''}`} data-testid="home-chart">
        <canvas
          ref={canvas}
          aria-hidden="true"
          onPointerDown={(event) => {
            if (event.button !== 0) return;
            event.currentTarget.setPointerCapture(event.pointerId);
            setHovered(null);
            mode.current = press(hands, placeOf(event));
          }}
          onPointerMove={(event) => {
            const place = placeOf(event);
            mode.current = mode.current.move(place);
            const box = mode.current.name === 'resting' ? hands.boxAt(place) : null;
            event.currentTarget.style.cursor =
              mode.current.name === 'panning' ? 'grabbing' : box === null ? 'default' : 'grab';
            setHovered(box === null ? null : { box, ...place });
          }}
          onPointerUp={(event) => {
            mode.current = mode.current.release(placeOf(event));
          }}
          onPointerCancel={() => {
            mode.current = mode.current.cancel();
          }}
          onPointerLeave={() => setHovered(null)}
        />
        <StintTargets data={data} numbers={marks.numbers} selected={marks.selectedStint} />
        {chosen === undefined ? null : (
          <div
            className={styles.chosen}
            data-testid="chosen-stint"
            style={{ left: chosen.x, top: chosen.y, width: chosen.width, height: chosen.height }}
          />
        )}
        {drag === null ? null : (
          <div
            className={styles.ghost}
            style={{
              left: scale.x(drag.startS),
              width: Math.max(8, scale.x(drag.startS + drag.box.endS - drag.box.startS) - scale.x(drag.startS)),
              top: drag.box.y + drag.box.height / 2 - 6,
            }}
          >
            <span>
              {formatPet(drag.startS)}
              {drag.to === drag.box.person ? '' : ` → ${drag.to}`} · {drag.words}
            </span>
          </div>
        )}
        {hovered === null ? null : (
          <div
            className={styles.card}
            style={{ left: Math.min(hovered.x + 14, size.width - 310), top: Math.max(4, hovered.y - 74) }}
          >
            <b>{hovered.box.title}</b>
            {hovered.box.person} at{' '}
            {data.shelves.find(({ place }) => place === hovered.box.place)?.title ?? hovered.box.place}
            <br />
            PET {formatPet(hovered.box.startS)} to {formatPet(hovered.box.endS)}
          </div>
        )}
      </div>
    </>
  );
}

/** What the replay says of the plan with the stint where it is held, in a few words. */
async function liveCheck({ box, startS, to }: DragShown): Promise<string> {
  const { text, timeline } = documentStore.getState().copy;
  const { campaign, hardware } = derivedStore.getState().opening.value ?? {};
  if (campaign == null || hardware == null || timeline === null) return '';
  const ground = { campaign, hardware };
  let candidate: Timeline = moveStint({ stint: box.stint, startS, pushesLater: false })(ground, timeline);
  if (to !== box.person) candidate = giveStint({ stint: box.stint, from: box.person, to })(ground, candidate);
  const judged = await checkingWorker().judge(text, candidate, 'replay', Date.now());
  const errors = judged?.findings.filter(({ severity }) => severity === 'error') ?? [];
  return errors.length === 0
    ? 'nothing breaks'
    : `${errors.length} ${errors.length === 1 ? 'error' : 'errors'}: ${errors[0]?.title ?? ''}`;
}

function snapped(data: HomeChartData, petS: number, stint: string): number {
  const edges = [
    ...data.eva.stints.filter((one) => one.stint !== stint).map(({ endS }) => endS),
    ...data.eva.moves.map(({ endS }) => endS),
    ...data.bands.flatMap((band) => band.pieces.flat()),
    ...data.joins.map((tie) => tie.petS),
  ];
  const near = edges
    .filter((edge) => Math.abs(edge - petS) < SNAP_S)
    .sort((a, b) => Math.abs(a - petS) - Math.abs(b - petS))[0];
  return Math.ceil((near ?? petS) / CELL_S) * CELL_S;
}
