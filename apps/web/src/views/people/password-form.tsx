import { useState } from 'react';
import { api } from '../../server-link/api.ts';
import { tell } from '../../session/session-store.ts';
import styles from './people.module.css';

export function PasswordForm() {
  const [old, setOld] = useState('');
  const [next, setNext] = useState('');
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        api
          .password(old, next)
          .then(() => {
            setOld('');
            setNext('');
            tell('Your password is changed');
          })
          .catch((cause: unknown) => tell(`Not changed: ${cause instanceof Error ? cause.message : String(cause)}`));
      }}
    >
      <h3>Change your password</h3>
      <label>
        The old one
        <input
          type="password"
          value={old}
          required
          autoComplete="current-password"
          onChange={(event) => setOld(event.target.value)}
        />
      </label>
      <label>
        The new one (12 characters or more)
        <input
          type="password"
          value={next}
          required
          minLength={12}
          autoComplete="new-password"
          onChange={(event) => setNext(event.target.value)}
        />
      </label>
      <button type="submit">Change it</button>
    </form>
  );
}
