/** The table twin of the drawing: who and what is where at the selected second. */
import type { SceneMoment } from '@handrail/eva/scene/scene';
import { formatPet } from '@handrail/quantity/time';
import styles from './vehicle-drawer.module.css';
import { HeadRow } from '../views/shell/head-row.tsx';

interface MomentTableProps {
  readonly moment: SceneMoment;
  /** Only what is at this place, person or arm ("place:pump-bay"); null: everything. */
  readonly only: string | null;
}

export function MomentTable({ moment, only }: MomentTableProps) {
  const places = new Map(moment.places.map((place) => [`place:${place.id}`, place.title]));
  const items = moment.items.filter((item) => only === null || item.outermost === only);
  const caption =
    only === null
      ? 'Everything'
      : `What is ${places.has(only) ? `at ${places.get(only)}` : `with ${only.split(':')[1]}`}`;
  return (
    <div className={styles.tables} tabIndex={0} role="region" aria-label="The vehicle as a table">
      <table>
        <caption>People and arms at PET {formatPet(moment.petS)}</caption>
        <HeadRow of={['Who', 'Doing', 'Tether']} />
        <tbody>
          {moment.people.map((person) => (
            <tr key={person.id}>
              <th scope="row">{person.id}</th>
              <td>
                {person.words}
                {person.on === null ? '' : `, on ${person.on}`}
              </td>
              <td>{person.tetherWords ?? 'not modelled'}</td>
            </tr>
          ))}
          {moment.arms.map((arm) => (
            <tr key={arm.id}>
              <th scope="row">{arm.title}</th>
              <td>
                {arm.words}
                {arm.rider === null ? '' : `, ${arm.rider} on its plate`}
              </td>
              <td>–</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table>
        <caption>
          {caption}: {items.length} {items.length === 1 ? 'piece' : 'pieces'}
        </caption>
        <HeadRow of={['Hardware', 'Kind', 'State', 'Where', 'Changed']} />
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th scope="row">{item.title}</th>
              <td>{item.kind}</td>
              <td>{item.state === '' ? '–' : item.state}</td>
              <td>{item.where}</td>
              <td>{item.changedS === null ? 'before this EVA' : `PET ${formatPet(item.changedS)}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {moment.undrawn.length === 0 ? null : <p>Not drawn: {moment.undrawn.join('; ')}.</p>}
    </div>
  );
}
