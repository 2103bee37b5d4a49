import type { Role } from '@handrail/wire/api/api-types';
import { useState } from 'react';
import { api } from '../../server-link/api.ts';
import { tell } from '../../session/session-store.ts';
import { TextField } from '../shell/text-field.tsx';
import styles from './people.module.css';
import { ROLES, ROLE_WORDS } from './roles.ts';

/** A new account: a name, a first password to hand over, what the person may do. */
export function AccountForm({ onDone }: { readonly onDone: () => void }) {
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [roles, setRoles] = useState<readonly Role[]>(['viewer']);
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        api
          .addUser(name.trim(), password, roles)
          .then(() => {
            tell(`${name.trim()} has an account`);
            setName('');
            setPassword('');
            onDone();
          })
          .catch((cause: unknown) => tell(`Not added: ${cause instanceof Error ? cause.message : String(cause)}`));
      }}
    >
      <h3>A new account</h3>
      <TextField label="Name" words={name} onWords={setName} maxLength={64} autoComplete="off" />
      <TextField
        label="First password (12 characters or more)"
        words={password}
        onWords={setPassword}
        type="password"
        minLength={12}
        autoComplete="new-password"
      />
      <fieldset>
        <legend>May</legend>
        {ROLES.map((role) => (
          <label key={role}>
            <input
              type="checkbox"
              checked={roles.includes(role)}
              onChange={(event) =>
                setRoles(event.target.checked ? [...roles, role] : roles.filter((one) => one !== role))
              }
            />
            {role}: {ROLE_WORDS[role]}
          </label>
        ))}
      </fieldset>
      <button type="submit">Add the account</button>
    </form>
  );
}
