import { AmbientLight, DirectionalLight, Group, HemisphereLight } from 'three';
import type { SceneMoment } from '@handrail/eva/scene/scene';

/** The Sun with its shadows, or what is left of light in the planet's shadow. Where no Sun is stated: even light, no shadow. */
export class SunLamp {
  readonly group = new Group();
  private readonly sun = new DirectionalLight(0xffffff, 2.6);
  private readonly fill = new AmbientLight(0xffffff, 0.75);
  private readonly sky = new HemisphereLight(0xdfe8ff, 0x404040, 0.5);
  private readonly radiusM: number;

  constructor(centre: readonly [number, number, number], radiusM: number) {
    this.radiusM = radiusM;
    this.sun.castShadow = true;
    this.sun.shadow.mapSize.set(2048, 2048);
    this.sun.shadow.bias = -0.0008;
    this.sun.shadow.normalBias = 0.03;
    const { camera } = this.sun.shadow;
    camera.left = camera.bottom = -radiusM;
    camera.right = camera.top = radiusM;
    camera.near = radiusM;
    camera.far = radiusM * 5;
    this.sun.target.position.set(...centre);
    this.group.add(this.sun, this.sun.target, this.fill, this.sky);
  }

  show({ sunDirection, isNight }: SceneMoment): void {
    const isDay = sunDirection !== null && isNight !== true;
    this.sun.visible = isDay;
    this.fill.intensity = isDay ? 0.75 : isNight === true ? 0.85 : 1.6;
    this.sky.intensity = isDay ? 0.35 : isNight === true ? 0.25 : 1;
    if (sunDirection === null) return;
    const { x, y, z } = this.sun.target.position;
    const far = this.radiusM * 3;
    this.sun.position.set(x + sunDirection[0] * far, y + sunDirection[1] * far, z + sunDirection[2] * far);
  }
}
