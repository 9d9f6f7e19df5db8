import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  PMREMGenerator,
  Scene,
  SRGBColorSpace,
  Vector3,
  WebGLRenderer,
} from 'three'
import { LineMaterial } from 'three/addons/lines/LineMaterial.js'
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js'
import { FIRST_ORBIT, type Orbit } from './orbit.ts'
import { openingAt, type Rim, rimsOf } from './pick.ts'
import type { SpaceScene, Stuff } from './scene.ts'
import { DARK, LIGHT, surroundings } from './surroundings.ts'

/** Which opening stands out. */
export interface Chosen {
  readonly part: string
  readonly opening: string
}

/** A picture in space on a canvas. */
export interface Stage {
  readonly show: (scene: SpaceScene) => void
  readonly look: (orbit: Orbit) => void
  readonly choose: (chosen: Chosen | null) => void
  /** The opening that is seen at a place of the picture, or within `slack` of it [px]; null: none. */
  readonly openingAt: (x: number, y: number, slack: number) => Chosen | null
  readonly dress: (dark: boolean) => void
  readonly resize: (width: number, height: number) => void
  /** How much of the picture something lies over, at its left and right [px]: the stove moves to where it is seen. */
  readonly leaveFree: (left: number, right: number) => void
  /** Gives back what the graphics card holds. */
  readonly end: () => void
}

/** Half the angle of view: narrow, so that uprights stay nearly upright [deg]. */
const LENS = 22
/** Side of what tin mirrors: it is dull, and a device without a graphics card takes seconds for more [px]. */
const MIRROR = 64
/** Air round the stove in the picture [1]. */
const MARGIN = 1.04

const SHINE: Readonly<Record<Stuff, { readonly metalness: number; readonly roughness: number }>> = {
  tin: { metalness: 0.85, roughness: 0.34 },
  'sooty tin': { metalness: 0.6, roughness: 0.55 },
  fuel: { metalness: 0, roughness: 0.95 },
}

const clear = (scene: Scene): void => {
  for (const child of [...scene.children]) {
    if (child instanceof Mesh || child instanceof LineSegments) {
      ;(child.geometry as BufferGeometry).dispose()
      scene.remove(child)
    }
  }
}

const free = (scene: Scene): void => {
  scene.traverse((child) => {
    if (!(child instanceof Mesh || child instanceof LineSegments)) return
    ;(child.geometry as BufferGeometry).dispose()
    for (const material of [child.material].flat() as Material[]) material.dispose()
  })
}

/**
 * A stage on a canvas, or null where this device has no WebGL. z is up and the stove's front towards +y, as in its solids.
 * It draws when something has changed and never else.
 */
export const openStage = (canvas: HTMLCanvasElement): Stage | null => {
  let renderer: WebGLRenderer
  try {
    renderer = new WebGLRenderer({ canvas, antialias: true, powerPreference: 'low-power' })
  } catch {
    return null
  }
  renderer.outputColorSpace = SRGBColorSpace
  const scene = new Scene()
  const camera = new PerspectiveCamera(LENS, 1, 1, 1000)
  camera.up.set(0, 0, 1)
  const ambient = new AmbientLight('#ffffff', 0.5)
  const sun = new DirectionalLight('#ffffff', 1.5)
  scene.add(ambient, sun)
  const materials = Object.fromEntries(
    (['tin', 'sooty tin', 'fuel'] as const).map((stuff) => [
      stuff,
      new MeshStandardMaterial({
        ...SHINE[stuff],
        side: DoubleSide,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
      }),
    ]),
  ) as Record<Stuff, MeshStandardMaterial>
  const line = new LineBasicMaterial({ transparent: true, opacity: 0.75 })
  const ember = new LineMaterial({ linewidth: 3 })
  // What lies behind tin is hinted at.
  const hint = new LineMaterial({ linewidth: 2, depthTest: false, transparent: true, opacity: 0.28 })
  const generator = new PMREMGenerator(renderer)
  let mirrored: ReturnType<PMREMGenerator['fromScene']> | null = null
  let shown: SpaceScene | null = null
  let orbit = FIRST_ORBIT
  let chosen: Chosen | null = null
  let rims: readonly LineSegments2[] = []
  let holes: readonly Rim[] = []
  const size = { width: 1, height: 1 }
  const covered = { left: 0, right: 0 }
  const seen = new Vector3()
  let asked = 0
  let ended = false

  const draw = (): void => {
    asked = 0
    if (ended) return
    if (shown !== null) {
      // As far as it takes for the stove to fill the picture, whichever way it is narrower.
      const half = (LENS * Math.PI) / 360
      const reach = Math.tan(half)
      const [tall, wide] = [
        (shown.height / 2) * Math.cos(orbit.tilt) + (shown.width / 2) * Math.abs(Math.sin(orbit.tilt)),
        shown.width / 2,
      ]
      const free = Math.max(0.2, 1 - (covered.left + covered.right) / size.width)
      const away =
        (Math.max(tall / reach, wide / (reach * camera.aspect * free)) * MARGIN) / orbit.zoom +
        shown.width / 2
      const [c, s] = [Math.cos(orbit.tilt), Math.sin(orbit.tilt)]
      camera.position.set(
        away * c * Math.sin(orbit.turn),
        away * c * Math.cos(orbit.turn),
        shown.middle + away * s,
      )
      camera.near = Math.max(1, away - 2 * shown.radius)
      camera.far = away + 2 * shown.radius
      camera.lookAt(0, 0, shown.middle)
      const aside = (covered.right - covered.left) / 2
      if (aside === 0) camera.clearViewOffset()
      else camera.setViewOffset(size.width, size.height, aside, 0, size.width, size.height)
      camera.updateProjectionMatrix()
      // From over the left shoulder of whoever looks.
      sun.position.set(Math.sin(orbit.turn + 0.7) * 3, Math.cos(orbit.turn + 0.7) * 3, 4)
    }
    renderer.render(scene, camera)
  }
  const ask = (): void => {
    if (asked === 0 && !ended) asked = requestAnimationFrame(draw)
  }
  const outline = (): void => {
    for (const old of rims) scene.remove(old)
    rims[0]?.geometry.dispose()
    rims = []
    const lines = shown?.outlines.find(
      ({ part, opening }) => part === chosen?.part && opening === chosen.opening,
    )?.lines
    if (lines === undefined || lines.length === 0) return
    const geometry = new LineSegmentsGeometry().setPositions(lines)
    rims = [new LineSegments2(geometry, hint), new LineSegments2(geometry, ember)]
    for (const [i, rim] of rims.entries()) {
      rim.renderOrder = 2 + i
      scene.add(rim)
    }
  }

  const lost = (event: Event): void => event.preventDefault()
  const back = (): void => ask()
  canvas.addEventListener('webglcontextlost', lost)
  canvas.addEventListener('webglcontextrestored', back)

  return {
    show: (next) => {
      shown = next
      rims = []
      holes = rimsOf(next.outlines)
      clear(scene)
      for (const { stuff, positions, normals, edges, name } of next.bodies) {
        const geometry = new BufferGeometry()
        geometry.setAttribute('position', new BufferAttribute(positions, 3))
        geometry.setAttribute('normal', new BufferAttribute(normals, 3))
        const body = new Mesh(geometry, materials[stuff])
        body.name = name
        const rims = new BufferGeometry()
        rims.setAttribute('position', new BufferAttribute(edges, 3))
        scene.add(body, new LineSegments(rims, line))
      }
      outline()
      ask()
    },
    look: (next) => {
      orbit = next
      ask()
    },
    choose: (next) => {
      chosen = next
      outline()
      ask()
    },
    openingAt: (x, y, slack) => {
      if (shown === null) return null
      const found = openingAt(
        holes,
        {
          eye: camera.position.toArray(),
          project: (px, py, pz) => {
            seen.set(px, py, pz).project(camera)
            return Math.abs(seen.z) > 1
              ? null
              : { x: ((seen.x + 1) / 2) * size.width, y: ((1 - seen.y) / 2) * size.height }
          },
          solids: shown.bodies.map(({ positions }) => positions),
        },
        { x, y },
        slack,
      )
      return found === null ? null : { part: found.part, opening: found.opening }
    },
    dress: (dark) => {
      const palette = dark ? DARK : LIGHT
      scene.background = new Color(palette.paper)
      line.color.set(palette.line)
      ember.color.set(palette.ember)
      hint.color.set(palette.ember)
      for (const stuff of ['tin', 'sooty tin', 'fuel'] as const)
        materials[stuff].color.set(palette.tin[stuff])
      sun.intensity = palette.light
      const room = surroundings(palette)
      mirrored?.dispose()
      mirrored = generator.fromScene(room, 0.03, 0.1, 100, { size: MIRROR })
      free(room)
      scene.environment = mirrored.texture
      ask()
    },
    resize: (width, height) => {
      if (width < 1 || height < 1) return
      size.width = width
      size.height = height
      renderer.setPixelRatio(Math.min(devicePixelRatio, 2))
      renderer.setSize(width, height, false)
      camera.aspect = width / height
      for (const material of [ember, hint]) material.resolution.set(width, height)
      ask()
    },
    leaveFree: (left, right) => {
      covered.left = left
      covered.right = right
      ask()
    },
    end: () => {
      ended = true
      cancelAnimationFrame(asked)
      canvas.removeEventListener('webglcontextlost', lost)
      canvas.removeEventListener('webglcontextrestored', back)
      clear(scene)
      for (const material of [...Object.values(materials), line, ember, hint]) material.dispose()
      mirrored?.dispose()
      generator.dispose()
      renderer.dispose()
      // A browser has few of these to give, and hands the next one to whoever comes.
      renderer.forceContextLoss()
    },
  }
}
