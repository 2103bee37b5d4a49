import { Group } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';

/**
 * The drawing of a body as a binary glTF 2.0 file, kept beside the campaign under the body's name. glTF has y upward, the vehicle's
 * axes have z upward: the model is turned so that its y lies along the vehicle's z.
 * @returns null: the campaign has none, or it cannot be read; the stated boxes are then drawn
 */
export async function loadModel(campaignId: string, body: string): Promise<Group | null> {
  const answer = await fetch(`/api/campaigns/${encodeURIComponent(campaignId)}/models/${encodeURIComponent(body)}.glb`);
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
