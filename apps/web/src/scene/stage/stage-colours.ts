/** Colours of the drawing, read from the page's own tokens so that the dark and the light theme hold here too. */
import { Color } from 'three';

export interface StageColours {
  readonly paper: Color;
  readonly panel: Color;
  readonly ink: Color;
  readonly soft: Color;
  readonly line: Color;
  readonly first: Color;
  readonly second: Color;
  readonly wall: Color;
  readonly ride: Color;
  readonly warning: Color;
  readonly focus: Color;
  readonly families: readonly Color[];
}

export const FAMILY_COLOURS = 8;

/** @param element any element inside the themed page */
export function stageColours(element: HTMLElement): StageColours {
  // A canvas of one pixel resolves light-dark() and every colour syntax to numbers, which three's own parser does not read.
  const probe = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const holder = document.createElement('span');
  element.append(holder);
  const read = (token: string): Color => {
    holder.style.color = `var(${token})`;
    if (probe === null) return new Color(0x888888);
    probe.clearRect(0, 0, 1, 1);
    probe.fillStyle = getComputedStyle(holder).color;
    probe.fillRect(0, 0, 1, 1);
    const [red = 0, green = 0, blue = 0] = probe.getImageData(0, 0, 1, 1).data;
    return new Color().setRGB(red / 255, green / 255, blue / 255, 'srgb');
  };
  const colours = {
    paper: read('--paper'),
    panel: read('--panel'),
    ink: read('--ink'),
    soft: read('--soft'),
    line: read('--line'),
    first: read('--first'),
    second: read('--second'),
    wall: read('--wall'),
    ride: read('--ride'),
    warning: read('--warning'),
    focus: read('--focus'),
    families: Array.from({ length: FAMILY_COLOURS }, (_, index) => read(`--family-${index}`)),
  };
  holder.remove();
  return colours;
}
