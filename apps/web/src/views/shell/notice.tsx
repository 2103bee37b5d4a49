/** One sentence on what just happened: spoken by screen readers, seen for a while by everybody, in nobody's way. */
import { useEffect, useState } from 'react';
import styles from './shell.module.css';
import { useSession } from './use-stores.ts';

const SHOWN_MS = 8000;

export function Notice() {
  const notice = useSession((state) => state.notice);
  const [isShown, setShown] = useState(false);
  useEffect(() => {
    if (notice === '') return undefined;
    setShown(true);
    const due = setTimeout(() => setShown(false), SHOWN_MS);
    return () => clearTimeout(due);
  }, [notice]);
  return (
    <div className={styles.noticePlace}>
      <p role="status" className={isShown ? styles.notice : 'out-of-sight'} data-testid="notice">
        {notice}
      </p>
    </div>
  );
}
