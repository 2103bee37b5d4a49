/** The main planning view: verdict on top, ranked list left, the chart in the middle, what pulls below it, the sheet at the right. */
import { Suspense, useEffect } from 'react';
import { look } from '../../session/session-store.ts';
import { HomeChart } from '../home-chart/home-chart.tsx';
import { OrbitRows } from '../orbit-rows/orbit-rows.tsx';
import { RankedList } from '../ranked-list/ranked-list.tsx';
import { Sheet } from '../sheet/sheet.tsx';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { Strip } from '../strip/strip.tsx';
import { Verdict } from '../verdict/verdict.tsx';
import { ChartTwin } from './chart-twin.tsx';
import { NoPlan } from './no-plan.tsx';
import { Offer } from './offer.tsx';
import { PlanBar } from './plan-bar.tsx';
import styles from './plan.module.css';
import { VehicleDrawer } from './vehicle-drawer.ts';

export function PlanView() {
  const timeline = useDocument((state) => state.copy.timeline);
  const revision = useDocument((state) => state.revision);
  const evaId = useSession((state) => state.evaId);
  const arrangement = useSession((state) => state.arrangement);
  const isTable = useSession((state) => state.isTwinShown);
  const isDrawerOpen = useSession((state) => state.isDrawerOpen);
  const judged = useDerived((state) => state.judged);
  const picked = useSession((state) => (state.selection?.what === 'stint' ? state.selection.id : null));
  const isNamed = timeline?.evas.some(({ eva }) => eva === evaId) === true;
  // Something is always looked at while there is a plan; a stint that is chosen brings its EVA along.
  useEffect(() => {
    const ofPicked = timeline?.evas.find(({ stints }) => stints.some(({ stint }) => stint === picked))?.eva ?? null;
    if (ofPicked !== null && ofPicked !== evaId) look({ evaId: ofPicked });
    else if (!isNamed && timeline?.evas[0] !== undefined) look({ evaId: timeline.evas[0].eva });
  }, [isNamed, timeline, picked, evaId]);
  const eva = evaId === null ? undefined : judged.value?.evas.get(evaId);
  const isStale = judged.revision !== revision;
  return (
    <div className={styles.plan}>
      <Verdict />
      <div className={styles.regions}>
        <RankedList />
        <div className={styles.centre}>
          <PlanBar />
          <Offer />
          {timeline === null ? (
            <NoPlan />
          ) : eva === undefined ? (
            <p role="status" className={styles.waiting}>
              {judged.failed ?? 'The plan is being read.'}
            </p>
          ) : (
            <>
              <div className={styles.chart}>
                {isTable ? (
                  <ChartTwin data={eva.chart} />
                ) : arrangement === 'home' ? (
                  <HomeChart data={eva.chart} isStale={isStale} />
                ) : (
                  <OrbitRows data={eva.chart} />
                )}
              </div>
              <Strip data={eva.chart} />
            </>
          )}
          {isDrawerOpen && timeline !== null && VehicleDrawer !== null ? (
            <section className={styles.drawer} aria-label="Vehicle at the selected minute">
              <Suspense fallback={<p role="status">The vehicle is being opened …</p>}>
                <VehicleDrawer />
              </Suspense>
            </section>
          ) : null}
        </div>
        <Sheet />
      </div>
    </div>
  );
}
