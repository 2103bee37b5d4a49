import { type ComponentType, lazy } from 'react';

/** The drawer comes with its own library of 3-D: it is fetched when it is opened. */
const found = import.meta.glob<{ readonly default: ComponentType }>('../../scene/vehicle-drawer.tsx');
const [open] = Object.values(found);

export const VehicleDrawer = open === undefined ? null : lazy(open);
