/** Words of the drawing as elements over it: people and arms always, places near the camera or selected. */
import type { Camera } from 'three';
import { Vector3 as Point } from 'three';
import type { SceneMoment } from '@handrail/eva/scene/scene';
import type { Vector3 } from '@handrail/quantity/vector';

interface Label {
  readonly key: string;
  readonly words: string;
  readonly sort: 'person' | 'arm' | 'place';
  readonly at: Vector3;
}

export class Labels {
  private readonly layer: HTMLElement;
  private readonly elements = new Map<string, HTMLElement>();

  constructor(layer: HTMLElement) {
    this.layer = layer;
  }

  /** Places yield to people, and to places that were put before them: no label lies on another. */
  show(moment: SceneMoment, camera: Camera, widthPx: number, heightPx: number, selectedPlace: string | null): void {
    const wanted: Label[] = [
      ...moment.people.map(({ id, words, positionM }) => ({
        key: `person:${id}`,
        words: `${id} · ${words}`,
        sort: 'person' as const,
        at: positionM,
      })),
      ...moment.arms.flatMap(({ id, title, words, tipM }) =>
        tipM === null ? [] : [{ key: `arm:${id}`, words: `${title} · ${words}`, sort: 'arm' as const, at: tipM }],
      ),
      ...moment.places
        .toSorted((a, b) => Number(b.id === selectedPlace) - Number(a.id === selectedPlace))
        .map(({ id, title, positionM }) => ({
          key: `place:${id}`,
          words: title,
          sort: 'place' as const,
          at: positionM,
        })),
    ];
    const taken: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }[] =
      [];
    const shown = new Set<string>();
    for (const label of wanted) {
      const at = new Point(...label.at).project(camera);
      if (at.z > 1 || Math.abs(at.x) > 1 || Math.abs(at.y) > 1) continue;
      const element = this.elementOf(label);
      const left = Math.round(((at.x + 1) / 2) * widthPx) + 10;
      const width = element.offsetWidth || label.words.length * 7;
      const height = element.offsetHeight || 18;
      let top = Math.round(((1 - at.y) / 2) * heightPx) - 9;
      const isFree = (): boolean =>
        !taken.some((box) => left < box.right && box.left < left + width && top < box.bottom && box.top < top + height);
      // A person's words are never left out: they move down until they are clear.
      for (let step = 0; label.sort !== 'place' && !isFree() && step < 8; step++) top += height;
      if (!isFree()) continue;
      taken.push({ left, top, right: left + width, bottom: top + height });
      element.style.transform = `translate(${left}px, ${top}px)`;
      shown.add(label.key);
    }
    for (const [key, element] of this.elements) element.hidden = !shown.has(key);
  }

  private elementOf({ key, words, sort }: Label): HTMLElement {
    let element = this.elements.get(key);
    if (element === undefined) {
      element = document.createElement('span');
      element.dataset.sort = sort;
      this.layer.append(element);
      this.elements.set(key, element);
    }
    element.hidden = false;
    if (element.textContent !== words) element.textContent = words;
    return element;
  }
}
