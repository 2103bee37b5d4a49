/** What pulls at the selected minute: clocks that run, requests in force, supplies; the rest of the EVA beside it. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { pullsOf } from '@handrail/eva/brief/parts/strip';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { useMemo } from 'react';
import { useDerived, useSession } from '../shell/use-stores.ts';
import styles from './strip.module.css';

export function Strip({ data }: { readonly data: HomeChartData }) {
  const minuteS = useSession((state) => state.minuteS);
  const opening = useDerived((state) => state.opening.value);
  const pulls = useMemo(
    () =>
      opening?.campaign == null || opening.hardware === null
        ? []
        : pullsOf({ campaign: opening.campaign, hardware: opening.hardware }, data),
    [opening, data],
  );
  const span = data.endS - data.startS;
  const at = (petS: number): string => `${((petS - data.startS) / span) * 100}%`;
  const now = pulls.filter(({ startS, endS }) => startS <= minuteS && minuteS < endS);
  return (
    <section className={styles.strip} aria-label="What pulls at the selected minute" tabIndex={0}>
      <h3>
        What pulls at PET {formatPet(minuteS)}:{' '}
        {now.length === 0 ? 'no clock runs, no request is in force' : `${now.length} of ${pulls.length}`}
      </h3>
      <ul>
        {pulls.map((pull) => {
          const isNow = now.includes(pull);
          const left = pull.endS - minuteS;
          return (
            <li key={`${pull.title}${pull.startS}`} className={isNow ? styles.now : undefined}>
              <span>{pull.title}</span>
              <div>
                <div className={styles.gauge} title={pull.words}>
                  <i
                    data-kind={pull.kind}
                    style={{ left: at(pull.startS), width: `${((pull.endS - pull.startS) / span) * 100}%` }}
                  />
                  <b style={{ left: at(minuteS) }} />
                </div>
                <span className={styles.words}>
                  {isNow ? `${formatDuration(left)} to go: ${pull.words}` : pull.words}
                </span>
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
