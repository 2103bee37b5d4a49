/** Every key, by group; the same table that the keys are read from. */
import { Button, Dialog, Heading } from 'react-aria-components';
import { type Action, keyWords } from '../../actions/action.ts';
import { ALL_ACTIONS } from '../../actions/all-actions.ts';
import { look } from '../../session/session-store.ts';
import { Overlay } from './overlay.tsx';
import styles from './palette.module.css';

export default function KeySheet() {
  const withKeys = ALL_ACTIONS.filter(({ keys }) => keys !== undefined);
  const groups = [...new Set(withKeys.map(({ group }) => group))];
  const close = (): void => look({ areKeysShown: false });
  return (
    <Overlay width="wide" onClose={close}>
      <Dialog className={styles.keys ?? ''}>
        <Heading slot="title">Keys</Heading>
        <div className={styles.groups}>
          {groups.map((group) => (
            <KeyGroup key={group} group={group} actions={withKeys.filter((one) => one.group === group)} />
          ))}
        </div>
        <p>
          In the text: Ctrl+Space completes, F8 goes to the next problem, Ctrl+F finds; Esc then Tab leaves the editor.
          A key of one letter rests while a field is being typed in.
        </p>
        <Button slot="close">Close</Button>
      </Dialog>
    </Overlay>
  );
}

function KeyGroup({ group, actions }: { readonly group: string; readonly actions: readonly Action[] }) {
  return (
    <section>
      <h3>{group}</h3>
      <dl>
        {actions.map((action) => (
          <div key={action.id}>
            <dt>
              {action.keys?.map((key) => (
                <kbd key={key}>{keyWords(key)}</kbd>
              ))}
            </dt>
            <dd>{action.title}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
