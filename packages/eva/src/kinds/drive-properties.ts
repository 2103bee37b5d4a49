import type { KindProperty } from './kind.ts';

const band = (id: string, type: KindProperty['type'], about: string): readonly KindProperty[] => [
  { id: `${id}-least`, type, about: `${about}: the least that is still believed.` },
  { id, type, about: `${about}: the likely figure.` },
  { id: `${id}-most`, type, about: `${about}: the greatest that is still believed.` },
];

/** What a threaded fastener may state, for its window of turns and torque: by its drawing, or by thread, friction and preload. */
export const FASTENER_PROPERTIES: readonly KindProperty[] = [
  {
    id: 'thread',
    type: 'text',
    about: 'Thread designation, for example M8 or M8x1.25 or 3/8-16: the window can be worked out from it.',
  },
  { id: 'head', type: 'text', about: 'Head size, so that the socket fits.' },
  { id: 'turns-tolerance', type: 'number', about: 'Turns that the count may differ from the drawing, either way.' },
  { id: 'torque-tolerance', type: 'torque', about: 'Torque that the reading may differ from the drawing, either way.' },
  ...band('engagement', 'length', 'Length of thread to run from first engagement to snug'),
  ...band('snug-turns', 'number', 'Turns from snug to tight'),
  ...band('nut-factor', 'number', 'Nut factor K of torque = K × preload × diameter'),
  { id: 'preload-least', type: 'force', about: 'Preload that the joint needs at least.' },
  { id: 'preload-most', type: 'force', about: 'Preload that it may bear at most.' },
  { id: 'drive-source', type: 'text', about: 'Where these figures come from.' },
];

/** What a driver may state of itself, beside its torque range. */
export const TOOL_PROPERTIES: readonly KindProperty[] = [
  {
    id: 'torque-accuracy',
    type: 'number',
    about: 'Share by which its torque may be off, either way: 0.1 for a tenth.',
  },
  { id: 'turn-resolution', type: 'number', about: 'Smallest count of turns that it shows.' },
  { id: 'speed', type: 'rotation-rate', about: 'Speed of the free run.' },
  { id: 'slow-speed', type: 'rotation-rate', about: 'Speed of the last turns.' },
  { id: 'slow-turns', type: 'number', about: 'How many turns it drives slowly at the end.' },
  { id: 'handling', type: 'time', about: 'Setting it on, finding the head, reading it off.' },
];
