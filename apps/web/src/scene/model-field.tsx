/** Gives a body a drawing of its own. It is drawn only: shadows and light of the plan rest on the boxes of the text, and it says so. */
import { useState } from 'react';
import { documentStore } from '../document/document-store.ts';
import { tell } from '../session/session-store.ts';

interface ModelFieldProps {
  readonly bodies: readonly string[];
  readonly onKept: (body: string) => void;
}

export function ModelField({ bodies, onKept }: ModelFieldProps) {
  const [body, setBody] = useState(bodies[0] ?? '');
  const keep = async (file: File): Promise<void> => {
    const { campaignId } = documentStore.getState();
    if (campaignId === null) return;
    const answer = await fetch(
      `/api/campaigns/${encodeURIComponent(campaignId)}/models/${encodeURIComponent(body)}.glb`,
      {
        method: 'PUT',
        headers: { 'content-type': 'model/gltf-binary', 'x-handrail': '1' },
        body: file,
      },
    ).catch(() => null);
    if (answer?.ok === true) {
      tell(`${file.name} is the drawing of ${body}; shadows rest on the boxes of the text as before`);
      onKept(body);
      return;
    }
    const words = (await answer?.json().catch(() => null)) as { readonly message?: string } | null;
    tell(`The drawing was not kept: ${words?.message ?? 'the server cannot be reached'}`);
  };
  if (bodies.length === 0) return null;
  return (
    <details>
      <summary>Drawings of bodies (.glb)</summary>
      <label>
        Body{' '}
        <select value={body} onChange={(event) => setBody(event.target.value)}>
          {bodies.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>{' '}
      <label>
        Its drawing{' '}
        <input
          type="file"
          accept=".glb,model/gltf-binary"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file !== undefined) void keep(file);
          }}
        />
      </label>
    </details>
  );
}
