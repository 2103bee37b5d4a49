/** Who may do what, and who is here now. Accounts are kept by an administrator; everybody changes their own password. */
import type { Role, UserRow } from '@handrail/wire/api/api-types';
import { useEffect, useState } from 'react';
import { api } from '../../server-link/api.ts';
import { leave } from '../../server-link/start-session.ts';
import { tell } from '../../session/session-store.ts';
import { useServer } from '../shell/use-stores.ts';
import { AccountForm } from './account-form.tsx';
import { PasswordForm } from './password-form.tsx';
import styles from './people.module.css';
import { ROLES, ROLE_WORDS } from './roles.ts';

export default function PeopleView() {
  const session = useServer((state) => state.session);
  const people = useServer((state) => state.people);
  const isAdministrator = session?.user?.roles.includes('administrator') ?? false;
  return (
    <section className={styles.view} aria-label="People" tabIndex={0}>
      <h2>Here now</h2>
      {people.length === 0 ? (
        <p className={styles.soft}>Nobody else has this campaign open.</p>
      ) : (
        <ul>
          {people.map(({ name, at }) => (
            <li key={name}>
              <b>{name}</b> {at}
            </li>
          ))}
        </ul>
      )}
      {session?.mode === 'open' ? (
        <p className={styles.soft}>
          This server has one campaign file open on this machine, without accounts: whoever sits here may do everything.
          To work with several people, serve a folder: <code>handrail serve DIR</code>.
        </p>
      ) : (
        <>
          <h2>You: {session?.user?.name}</h2>
          <p>
            {session?.user?.roles.map((role) => ROLE_WORDS[role]).join('; ') ?? ''}{' '}
            <button type="button" onClick={() => void leave()}>
              Sign out
            </button>
          </p>
          <PasswordForm />
          {isAdministrator ? <Accounts /> : null}
        </>
      )}
    </section>
  );
}

function Accounts() {
  const [users, setUsers] = useState<readonly UserRow[]>([]);
  const read = (): void => {
    api.users().then(setUsers, say);
  };
  useEffect(read, []);
  const alter = (user: UserRow, made: { readonly roles?: readonly Role[]; readonly isLocked?: boolean }): void => {
    api.changeUser(user.id, made).then(read, say);
  };
  return (
    <>
      <h2>Accounts</h2>
      <table>
        <caption className="out-of-sight">Accounts and their roles</caption>
        <thead>
          <tr>
            <th scope="col">Name</th>
            {ROLES.map((role) => (
              <th key={role} scope="col" title={ROLE_WORDS[role]}>
                {role}
              </th>
            ))}
            <th scope="col">Locked</th>
          </tr>
        </thead>
        <tbody>
          {users.map((user) => (
            <tr key={user.id}>
              <th scope="row">{user.name}</th>
              {ROLES.map((role) => (
                <td key={role}>
                  <input
                    type="checkbox"
                    aria-label={`${user.name} is ${role}`}
                    checked={user.roles.includes(role)}
                    onChange={(event) =>
                      alter(user, {
                        roles: event.target.checked ? [...user.roles, role] : user.roles.filter((one) => one !== role),
                      })
                    }
                  />
                </td>
              ))}
              <td>
                <input
                  type="checkbox"
                  aria-label={`${user.name} is locked out`}
                  checked={user.isLocked}
                  onChange={(event) => alter(user, { isLocked: event.target.checked })}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <AccountForm onDone={read} />
    </>
  );
}

function say(cause: unknown): void {
  tell(`Not done: ${cause instanceof Error ? cause.message : String(cause)}`);
}
