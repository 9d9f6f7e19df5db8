import { isBuiltin } from 'node:module'
import { posix } from 'node:path'
import { parseSync, Visitor } from 'vite'

export interface Layer {
  /** Layers whose code this one may run. */
  readonly imports: readonly string[]
  /** Layers of which it may know the types only: their results reach it as plain data. */
  readonly types: readonly string[]
  /** No Node, no page, no clock, no chance: those come in as arguments. */
  readonly pure: boolean
}

const pure = (imports: readonly string[], types: readonly string[] = []): Layer => ({
  imports,
  types,
  pure: true,
})
const onTop = (imports: readonly string[]): Layer => ({ imports, types: [], pure: false })

const PURE = ['basis', 'stove', 'science', 'proof', 'craft', 'compose'] as const

/** Who may import whom: docs/decisions/0003-layers.md. */
export const LAYERS: Readonly<Record<string, Layer>> = {
  basis: pure([]),
  stove: pure(['basis']),
  science: pure(['basis', 'stove']),
  proof: pure(['basis', 'stove', 'science']),
  craft: pure(['basis', 'stove'], ['science', 'proof']),
  // The one pure place that may run a prediction and draw it.
  compose: pure(['basis', 'stove', 'science', 'proof', 'craft']),
  // What browser and server say to each other.
  wire: pure(['basis']),
  store: onTop([...PURE, 'wire']),
  server: onTop([...PURE, 'wire', 'store']),
  cli: onTop([...PURE, 'wire', 'store', 'server']),
  web: onTop([...PURE, 'wire']),
  // Runs in a published plan: no module, imports nothing.
  page: onTop([]),
}

interface Use {
  readonly specifier: string
  readonly typeOnly: boolean
}

interface Found {
  readonly uses: readonly Use[]
  /** Calls on the clock and on chance; the compiler and the linter refuse the other surroundings. */
  readonly reaches: readonly string[]
}

// The parser gives ESTree nodes; only the fields read here are named.
interface Node {
  readonly type: string
  readonly [field: string]: unknown
}

const asNode = (value: unknown): Node | null =>
  typeof value === 'object' && value !== null && 'type' in value ? (value as Node) : null
const nameOf = (value: unknown): string | null => {
  const node = asNode(value)
  if (node?.type === 'Identifier') return String(node.name)
  if (node?.type === 'Literal') return String(node.value)
  return null
}
const isNamed = (value: unknown, name: string): boolean =>
  asNode(value)?.type === 'Identifier' && nameOf(value) === name

const specifierOf = (source: unknown): string => {
  const node = asNode(source)
  return node?.type === 'Literal' && typeof node.value === 'string' ? node.value : '(computed)'
}

const allTypes = (node: Node, kind: 'importKind' | 'exportKind'): boolean => {
  const names = Array.isArray(node.specifiers) ? (node.specifiers as Node[]) : []
  return node[kind] === 'type' || (names.length > 0 && names.every((name) => name[kind] === 'type'))
}

/** Reads one module: what it imports, and what it reaches for. */
const read = (path: string, text: string): Found => {
  const { program, errors } = parseSync(path, text)
  if (errors.length > 0) throw new Error(`${path} does not parse: ${errors[0]?.message}`)
  const uses: Use[] = []
  const reaches: string[] = []
  const use = (source: unknown, typeOnly: boolean): void => {
    if (asNode(source) !== null) uses.push({ specifier: specifierOf(source), typeOnly })
  }
  const visitor = new Visitor({
    ImportDeclaration: (node) => use(node.source, allTypes(node as unknown as Node, 'importKind')),
    ExportNamedDeclaration: (node) => use(node.source, allTypes(node as unknown as Node, 'exportKind')),
    ExportAllDeclaration: (node) => use(node.source, node.exportKind === 'type'),
    ImportExpression: (node) => use(node.source, false),
    TSImportType: (node) => use(node.source, true),
    MemberExpression: (node) => {
      const member = nameOf(node.property)
      if (isNamed(node.object, 'Math') && member === 'random') reaches.push('Math.random')
      if (isNamed(node.object, 'Date') && member === 'now') reaches.push('Date.now')
    },
    VariableDeclarator: (node) => {
      if (!isNamed(node.init, 'Math') || node.id.type !== 'ObjectPattern') return
      const taken = node.id.properties.some(
        (property) => 'key' in property && nameOf(property.key) === 'random',
      )
      if (taken) reaches.push('Math.random')
    },
    NewExpression: (node) => {
      if (isNamed(node.callee, 'Date') && node.arguments.length === 0) reaches.push('new Date()')
    },
    CallExpression: (node) => {
      if (isNamed(node.callee, 'Date')) reaches.push('Date()')
    },
  })
  visitor.visit(program)
  return { uses, reaches }
}

/** The folder under `src/` that a module of ours lies in, or null for anything else. */
const layerOf = (path: string): string | null => {
  const [top, layer, rest] = path.split('/')
  return top === 'src' && layer !== undefined && rest !== undefined ? layer : null
}

/** Where an import of ours leads, from the top folder; null for a package or a part of Node. */
const target = (from: string, specifier: string): string | null => {
  if (specifier.startsWith('.')) return posix.join(posix.dirname(from), specifier)
  if (specifier.startsWith('#')) return `src/${specifier.slice(1)}`
  return null
}

const useFault = (from: string, name: string, layer: Layer, { specifier, typeOnly }: Use): string | null => {
  const to = target(from, specifier)
  if (to === null) {
    if (!layer.pure) return null
    if (specifier === '(computed)') return 'imports something that is only known when it runs'
    return isBuiltin(specifier) ? `imports ${specifier}, a part of Node` : null
  }
  // The words of a file, which the builder lays into the page: nothing of it runs.
  if (name === 'web' && to.endsWith('?raw')) return null
  const reached = layerOf(to)
  if (reached === null || !(reached in LAYERS)) return `imports ${specifier}, which is no layer of src`
  if (reached === name || layer.imports.includes(reached)) return null
  if (layer.types.includes(reached)) {
    return typeOnly ? null : `imports ${specifier}: of ${reached} it may know the types only`
  }
  return `imports ${specifier}: ${name} may not know ${reached}`
}

/** What is wrong with one module of `src/`, as sentences; empty when nothing is. */
export const layerFaults = (path: string, text: string): readonly string[] => {
  const name = layerOf(path)
  const layer = name === null ? undefined : LAYERS[name]
  if (name === null || layer === undefined) return [`${path} lies in no layer of src`]
  const { uses, reaches } = read(path, text)
  const wrong = uses.map((use) => useFault(path, name, layer, use)).filter((fault) => fault !== null)
  const outside = layer.pure ? reaches.map((what) => `uses ${what}: take it as an argument`) : []
  return [...wrong, ...outside].map((fault) => `${path} ${fault}`)
}
