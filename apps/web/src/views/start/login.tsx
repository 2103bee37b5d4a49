/** Who is it? Or, on the first day of a server, who keeps its accounts? */
import { CAUTION } from '@handrail/eva/brief/brief-input';
import { useState } from 'react';
import { api } from '../../server-link/api.ts';
import { enter } from '../../server-link/start-session.ts';
import { TextField } from '../shell/text-field.tsx';
import { useServer } from '../shell/use-stores.ts';
import styles from './start.module.css';

export default function Login() {
  const needsSetup = useServer((state) => state.session?.needsSetup ?? false);
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [token, setToken] = useState(() => new URLSearchParams(location.search).get('token') ?? '');
  const [fault, setFault] = useState('');
  const [isBusy, setBusy] = useState(false);
  const send = async (): Promise<void> => {
    setBusy(true);
    setFault('');
    try {
      await enter(
        await (needsSetup ? api.setup(name.trim(), password, token.trim()) : api.login(name.trim(), password)),
      );
    } catch (cause) {
      setFault(cause instanceof Error ? cause.message : String(cause));
    } finally {
      setBusy(false);
    }
  };
  return (
    <main className={styles.login}>
      <h1>Handrail</h1>
      <p>{needsSetup ? 'This server is new. Make the first account: it keeps the others.' : 'Sign in to plan.'}</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <TextField label="Name" words={name} onWords={setName} maxLength={64} autoComplete="username" />
        <TextField
          label={`Password${needsSetup ? ' (12 characters or more)' : ''}`}
          words={password}
          onWords={setPassword}
          type="password"
          minLength={needsSetup ? 12 : 1}
          autoComplete={needsSetup ? 'new-password' : 'current-password'}
        />
        {needsSetup ? (
          <TextField
            label="Set-up word that the server printed when it started"
            words={token}
            onWords={setToken}
            autoComplete="off"
          />
        ) : null}
        <button type="submit" disabled={isBusy} className={styles.first}>
          {needsSetup ? 'Make the account' : 'Sign in'}
        </button>
        <p role="alert" className={styles.fault}>
          {fault}
        </p>
      </form>
      <p className={styles.caution}>{CAUTION}</p>
    </main>
  );
}
