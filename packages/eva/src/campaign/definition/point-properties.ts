import { needed } from './define-node.ts';
import { quantity } from './value-type.ts';

const along = (axis: string) => needed(quantity('length', '-1000 m', '1000 m'), `Along the vehicle ${axis} axis.`);

/** A point in the vehicle frame. */
export const pointProperties = { x: along('x'), y: along('y'), z: along('z') };
