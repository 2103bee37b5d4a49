import { Group } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';

/** Asked for once: the drawing is made anew with every theme and EVA, its models stay the same. */
const known = new Map<string, Promise<Group | null>>();

/**
 * The drawing of a body as a binary glTF 2.0 file, kept beside the campaign under the body's name. glTF has y upward, the vehicle's
 * axes have z upward: the model is turned so that its y lies along the vehicle's z.
 * @param isNew it has just been kept: what was known of it before is forgotten
 * @returns null: the campaign has none, or it cannot be read; the stated boxes are then drawn
 */
export function loadModel(campaignId: string, body: string, isNew = false): Promise<Group | null> {
  const path = `/api/campaigns/${encodeURIComponent(campaignId)}/models/${encodeURIComponent(body)}.glb`;
  const before = isNew ? undefined : known.get(path);
  const model = before ?? fetchModel(path);
  known.set(path, model);
  return model;
}

async function fetchModel(path: string): Promise<Group | null> {
  const answer = await fetch(path);
  if (!answer.ok) return null;
  try {
    const { scene } = await new GLTFLoader().parseAsync(await answer.arrayBuffer(), '');
    scene.rotation.x = Math.PI / 2;
    const holder = new Group();
    holder.add(scene);
    return holder;
  } catch {
    return null;
  }
}
