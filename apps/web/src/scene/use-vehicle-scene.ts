import { type VehicleScene, vehicleScene } from '@handrail/eva/scene/vehicle-scene';
import { useMemo } from 'react';
import { useDerived, useDocument, useSession } from '../views/shell/use-stores.ts';

/** The scene of the EVA that is looked at; null: there is no plan, or the text has errors. */
export function useVehicleScene(): VehicleScene | null {
  const opening = useDerived((state) => state.opening.value);
  const timeline = useDocument((state) => state.copy.timeline);
  const evaId = useSession((state) => state.evaId);
  return useMemo(() => {
    if (opening?.campaign == null || opening.hardware === null || timeline === null || evaId === null) return null;
    return vehicleScene(opening.campaign, opening.hardware, timeline, evaId);
  }, [opening, timeline, evaId]);
}
