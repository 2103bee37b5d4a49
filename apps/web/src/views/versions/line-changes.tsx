import type { Comparison } from '@handrail/wire/api/api-types';
import styles from './versions.module.css';

/** Lines that differ, those of the older text with a minus, those of the newer with a plus. */
export function LineChanges({ lines }: { readonly lines: Comparison['lines'] }) {
  const differing = lines.filter(({ before, after }) => before === null || after === null);
  if (differing.length === 0) return <p className={styles.soft}>The texts are the same.</p>;
  return (
    <table className={styles.lines} data-testid="line-changes">
      <caption>
        {differing.length} {differing.length === 1 ? 'line differs' : 'lines differ'}
      </caption>
      <thead className="out-of-sight">
        <tr>
          <th scope="col">Line before</th>
          <th scope="col">Line after</th>
          <th scope="col">Change</th>
          <th scope="col">Text</th>
        </tr>
      </thead>
      <tbody>
        {differing.map(({ before, after, words }) => (
          <tr key={`${before ?? ''}|${after ?? ''}`} data-kind={before === null ? 'added' : 'removed'}>
            <td>{before}</td>
            <td>{after}</td>
            <td aria-label={before === null ? 'added' : 'removed'}>{before === null ? '+' : '−'}</td>
            <td>
              <code>{words === '' ? ' ' : words}</code>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
