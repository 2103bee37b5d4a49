import { campaignInstances } from './campaign-instances.ts';
import { findInstances, type Instance } from './instances.ts';

/** The instances that paths and requests for campaigns speak of; each n-th of them. */
export function instancesBehind(paths: readonly string[], every: number): Instance[] {
  return paths
    .flatMap((path) => (path.startsWith('campaigns:') ? campaignInstances(path) : findInstances([path])))
    .filter((_, index) => index % every === 0);
}
