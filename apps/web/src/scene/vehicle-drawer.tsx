/** The vehicle at the selected minute: scrub and play, pick to see what is here, measure, keep the view of a worksite. */
import { formatPet, formatUtcClock } from '@handrail/quantity/time';
import { distance, type Vector3 } from '@handrail/quantity/vector';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { look, sessionStore } from '../session/session-store.ts';
import { useDerived, useSession } from '../views/shell/use-stores.ts';
import { documentStore } from '../document/document-store.ts';
import { keepView } from './keep-view.ts';
import { ModelField } from './model-field.tsx';
import { MomentTable } from './moment-table.tsx';
import { PlanDrawing } from './plan-drawing.tsx';
import { Player, RATES, type Rate } from './player.ts';
import { loadModel } from './stage/load-model.ts';
import type { Pickable } from './stage/marks.ts';
import type { VehicleStage } from './stage/vehicle-stage.ts';
import { useVehicleScene } from './use-vehicle-scene.ts';
import styles from './vehicle-drawer.module.css';
import { VehiclePicture } from './vehicle-picture.tsx';

/** The other views follow a playing minute so often. */
const FOLLOW_MS = 250;

export default function VehicleDrawer() {
  const scene = useVehicleScene();
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const minuteS = useSession((state) => state.minuteS);
  const selection = useSession((state) => state.selection);
  const timeMode = useSession((state) => state.timeMode);
  const stage = useRef<VehicleStage | null>(null);
  const player = useRef<Player | null>(null);
  const [isPlaying, setPlaying] = useState(false);
  const [rate, setRate] = useState<Rate>(60);
  const [isFlat, setFlat] = useState(false);
  const [tape, setTape] = useState<readonly Vector3[] | null>(null);
  const [isTable, setTable] = useState(false);
  const families = useMemo(() => [...new Set(campaign?.vehicle.places.map(({ family }) => family) ?? [])], [campaign]);
  const people = useMemo(
    () => campaign?.people.filter(({ role }) => role === 'outside').map(({ id }) => id) ?? [],
    [campaign],
  );
  const moment = useMemo(() => scene?.at(minuteS) ?? null, [scene, minuteS]);

  useEffect(() => {
    if (scene === null) return;
    let told = 0;
    const made = new Player(
      {
        startS: scene.stage.startS,
        endS: scene.stage.endS,
        onTime: (petS) => {
          stage.current?.show(scene.at(petS));
          if (performance.now() - told < FOLLOW_MS) return;
          told = performance.now();
          look({ minuteS: Math.round(petS) });
        },
        onStop: () => setPlaying(false),
      },
      sessionStore.getState().minuteS,
    );
    player.current = made;
    return () => made.pause();
  }, [scene]);
  useEffect(() => {
    if (moment !== null && player.current?.isPlaying !== true) stage.current?.show(moment);
  }, [moment]);
  useEffect(() => {
    const what = selection?.what;
    const isHere = what === 'place' || what === 'person' || what === 'arm' || what === 'item';
    stage.current?.select(isHere ? { what, id: selection?.id ?? '' } : null);
  }, [selection, scene]);

  const pick = useCallback(
    (picked: Pickable | null, at: Vector3 | null) => {
      if (tape !== null && at !== null) {
        const ends = [...tape, at].slice(-2);
        setTape(ends);
        stage.current?.measure(ends.length === 2 ? [ends[0] as Vector3, ends[1] as Vector3] : null);
        return;
      }
      look({ selection: picked === null ? null : { what: picked.what, id: picked.id } });
    },
    [tape],
  );
  const goFlat = useCallback(() => setFlat(true), []);
  const dress = useCallback(async (body: string, isNew: boolean) => {
    const { campaignId } = documentStore.getState();
    const model = campaignId === null ? null : await loadModel(campaignId, body, isNew);
    if (model !== null) stage.current?.dress(body, model);
  }, []);

  if (scene === null || moment === null || campaign === null) return <p role="status">There is no plan to show.</p>;
  const placeId = selection?.what === 'place' ? selection.id : null;
  const only =
    placeId === null
      ? selection?.what === 'person' || selection?.what === 'arm'
        ? `${selection.what}:${selection.id}`
        : null
      : `place:${placeId}`;
  const clock = timeMode === 'pet' ? `PET ${formatPet(moment.petS)}` : `UTC ${formatUtcClock(moment.utcMs)}`;
  const light = moment.isNight === null ? 'light not stated' : moment.isNight ? 'night' : 'day';
  return (
    <div className={styles.drawer} data-testid="vehicle">
      <div className={styles.bar}>
        <button
          type="button"
          aria-pressed={isPlaying}
          onClick={() => {
            const it = player.current;
            if (it === null) return;
            if (it.isPlaying) it.pause();
            else {
              it.seek(minuteS);
              it.rate = rate;
              it.play();
              setPlaying(true);
            }
          }}
        >
          {isPlaying ? 'Pause' : 'Play'}
        </button>
        <label>
          <span className="out-of-sight">Speed</span>
          <select
            value={rate}
            onChange={(event) => {
              const wanted = RATES.find((one) => one === Number(event.target.value)) ?? 60;
              setRate(wanted);
              if (player.current !== null) player.current.rate = wanted;
            }}
          >
            {RATES.map((one) => (
              <option key={one} value={one}>
                {one}×
              </option>
            ))}
          </select>
        </label>
        <input
          type="range"
          aria-label="Minute of the EVA"
          aria-valuetext={clock}
          min={scene.stage.startS}
          max={scene.stage.endS}
          step={60}
          value={minuteS}
          onChange={(event) => {
            player.current?.pause();
            look({ minuteS: Number(event.target.value) });
          }}
        />
        <span className={styles.clock}>
          {clock}, {light}
        </span>
        <button
          type="button"
          aria-pressed={tape !== null}
          onClick={() => (stage.current?.measure(null), setTape(tape === null ? [] : null))}
        >
          {tape === null
            ? 'Measure'
            : tape.length < 2
              ? `Pick ${tape.length === 0 ? 'two points' : 'the other point'}`
              : `${distance(tape[0] as Vector3, tape[1] as Vector3).toFixed(2)} m in a straight line`}
        </button>
        <label>
          <span className="out-of-sight">View of a worksite</span>
          <select
            value={placeId ?? ''}
            onChange={(event) => {
              if (event.target.value === '') {
                look({ selection: null });
                stage.current?.lookAtAll();
                return;
              }
              look({ selection: { what: 'place', id: event.target.value } });
              stage.current?.lookAtPlace(event.target.value);
            }}
          >
            <option value="">whole vehicle</option>
            {moment.places.map((place) => (
              <option key={place.id} value={place.id}>
                {place.title}
                {place.seenFromM === null ? '' : ' (view kept)'}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          disabled={placeId === null || isFlat}
          onClick={() => {
            const from = stage.current?.standsAt();
            if (placeId !== null && from !== undefined) keepView(campaign, placeId, from);
          }}
        >
          Keep this view
        </button>
        <button type="button" aria-pressed={isFlat} onClick={() => setFlat(!isFlat)}>
          Plan drawing
        </button>
        <button type="button" aria-pressed={isTable} onClick={() => setTable(!isTable)}>
          Table
        </button>
      </div>
      {isFlat ? (
        <PlanDrawing
          stage={scene.stage}
          moment={moment}
          families={families}
          onPickPlace={(id) => look({ selection: { what: 'place', id } })}
        />
      ) : (
        <VehiclePicture
          scene={scene}
          moment={moment}
          families={families}
          people={people}
          stage={stage}
          onPick={pick}
          onNoWebGl={goFlat}
          onReady={() => {
            for (const { name } of scene.stage.bodies) void dress(name, false);
          }}
        />
      )}
      <div>
        <p className={styles.notes}>{scene.stage.notes.join('. ')}</p>
        <ModelField bodies={scene.stage.bodies.map(({ name }) => name)} onKept={(body) => void dress(body, true)} />
        {isTable || only !== null ? <MomentTable moment={moment} only={only} /> : null}
      </div>
    </div>
  );
}
