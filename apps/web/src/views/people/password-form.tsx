import { useState } from 'react';
import { api } from '../../server-link/api.ts';
import { tell } from '../../session/session-store.ts';
import { TextField } from '../shell/text-field.tsx';
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
      <TextField label="The old one" words={old} onWords={setOld} type="password" autoComplete="current-password" />
      <TextField
        label="The new one (12 characters or more)"
        words={next}
        onWords={setNext}
        type="password"
        minLength={12}
        autoComplete="new-password"
      />
      <button type="submit">Change it</button>
    </form>
  );
}
