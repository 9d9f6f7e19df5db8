import {
  BackSide,
  BufferAttribute,
  Color,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  Scene,
  SphereGeometry,
} from 'three'
import type { Stuff } from './scene.ts'

/** The colours of one look. */
export interface Palette {
  readonly paper: string
  readonly line: string
  readonly ember: string
  readonly sky: string
  readonly ground: string
  readonly panel: string
  readonly tin: Readonly<Record<Stuff, string>>
  readonly light: number
}

// The paper and ink of style/tokens.css; tin and fuel as they look beside them.
export const LIGHT: Palette = {
  paper: '#f7f1e5',
  line: '#2a2520',
  ember: '#c8451a',
  sky: '#fff9ee',
  ground: '#b8ab97',
  panel: '#ffffff',
  tin: { tin: '#d8d3c8', 'sooty tin': '#a99f92', fuel: '#b08d57' },
  light: 1.5,
}
export const DARK: Palette = {
  paper: '#1d1a17',
  line: '#0f0d0c',
  ember: '#f0824c',
  sky: '#b3a897',
  ground: '#26211d',
  panel: '#f3e8d6',
  tin: { tin: '#b9b2a6', 'sooty tin': '#7e766c', fuel: '#8d6f43' },
  light: 1.6,
}

/** What tin mirrors: a plain sky, the ground and a bright window on either side. */
export const surroundings = ({ sky, ground, panel }: Palette): Scene => {
  const room = new Scene()
  const dome = new SphereGeometry(10, 32, 16)
  const height = dome.getAttribute('position')
  const [above, below] = [new Color(sky), new Color(ground)]
  const colours = new Float32Array(3 * height.count)
  for (let i = 0; i < height.count; i += 1)
    below
      .clone()
      .lerp(above, Math.min(1, Math.max(0, height.getY(i) / 10 + 0.55)))
      .toArray(colours, 3 * i)
  dome.setAttribute('color', new BufferAttribute(colours, 3))
  room.add(new Mesh(dome, new MeshBasicMaterial({ vertexColors: true, side: BackSide })))
  const window = new MeshBasicMaterial({ color: new Color(panel).multiplyScalar(2.4), side: DoubleSide })
  for (const [x, z, wide] of [
    [-7, 3, 5],
    [7, 1, 2.5],
  ] as const) {
    const pane = new Mesh(new PlaneGeometry(wide, 9), window)
    pane.position.set(x, 2, z)
    pane.lookAt(0, 0, 0)
    room.add(pane)
  }
  return room
}
