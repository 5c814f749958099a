import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '..')
const everything = { ours: 'all', packages: 'all' }

/**
 * Which folder may import from which, beside itself. A folder of lib/ that is not here is reported, so a new one
 * gets its direction on the day it is made.
 */
const directions = {
  app: { ours: ['lib/kitchen', 'lib/ui', 'lib/auth', 'lib/station', 'lib/words'], packages: 'all' },
  'lib/kitchen': { ours: ['lib/auth', 'lib/calc', 'lib/db', 'lib/documents', 'lib/words'], packages: 'all' },
  'lib/auth': { ours: ['lib/db'], packages: 'all' },
  'lib/ui': { ours: ['lib/calc', 'lib/words', '*.input'], packages: 'all' },
  'lib/station': { ours: ['lib/calc', 'lib/words', '*.input'], packages: 'all' },
  'lib/calc': { ours: [], packages: ['decimal.js'] },
  'lib/words': { ours: [], packages: [] },
  'lib/db': { ours: ['lib/documents'], packages: 'all' },
  'lib/documents': { ours: [], packages: ['server-only', 'node:crypto', 'zod', 'canonicalize'] },
  'lib/ops': everything,
  seed: { ours: ['lib/auth', 'lib/calc', 'lib/db', 'lib/kitchen'], packages: 'all' },
  tests: everything,
  eslint: { ours: [], packages: 'all' },
}

/**
 * Which room of lib/kitchen may import from which, beside itself and what lies in no room. What is made comes before what
 * is made of it: stores, formulas, trials, their batches and readings, the result, the decision.
 */
const rooms = {
  audit: [],
  heavy: [],
  key: [],
  live: [],
  stores: [],
  notes: ['intake'],
  photos: ['stores'],
  people: ['stores'],
  stations: ['batches', 'checks', 'conduct', 'notes', 'readings', 'repairs', 'steps', 'trials', 'water', 'weighings'],
  calculators: ['heavy'],
  formulas: ['stores'],
  trials: ['formulas', 'heavy', 'key', 'stores'],
  batches: [],
  conduct: [],
  intake: [],
  readings: ['batches', 'conduct', 'intake', 'key', 'trials'],
  water: ['readings', 'stores', 'trials'],
  steps: ['batches', 'intake', 'readings', 'trials'],
  checks: ['intake', 'readings', 'steps', 'stores'],
  shifts: [
    'batches',
    'checks',
    'conduct',
    'intake',
    'key',
    'readings',
    'repairs',
    'steps',
    'trials',
    'water',
    'weighings',
  ],
  weighings: ['batches', 'conduct', 'intake', 'key', 'readings', 'stores', 'trials'],
  repairs: ['batches', 'conduct', 'trials'],
  results: [
    'batches',
    'checks',
    'conduct',
    'formulas',
    'heavy',
    'key',
    'readings',
    'repairs',
    'stores',
    'trials',
    'weighings',
  ],
  amendments: ['batches', 'conduct', 'heavy', 'intake', 'readings', 'results', 'trials'],
  evidence: ['amendments', 'heavy', 'repairs', 'results', 'trials', 'weighings'],
  decisions: ['evidence', 'formulas', 'heavy', 'results', 'trials'],
  jobs: ['audit', 'photos'],
  desk: ['amendments', 'batches', 'formulas', 'readings', 'stores', 'trials'],
}
/** Lists of what the rooms bring, which their own room hands on without knowing it. */
const roomLists = [
  'lib/kitchen/heavy/works',
  'lib/kitchen/intake/handlers',
  'lib/kitchen/intake/open-api-document',
  'lib/kitchen/intake/aside-listeners',
  'lib/kitchen/trials/told-by-closed-trials',
]

/** Files that are held to more, or to less, than their folder. */
const special = [
  { is: (file) => file.endsWith('.input.ts'), may: { ours: ['lib/calc', '*.input'], packages: ['zod'], alone: true } },
  {
    is: (file) => /^lib\/calc\/([^/]+\/([^/]+-)?entries|catalogue|entry)\.ts$/.test(file),
    may: { ours: [], packages: ['zod', 'decimal.js'] },
  },
]

const reason = {
  app: 'pages go through queries and commands, which ask who may',
  'lib/kitchen': 'use cases know nothing of screens or of how they are started',
  'lib/auth': 'sign-in knows the database and nothing above it',
  'lib/ui': 'what runs in the browser must not reach the database or a use case',
  'lib/station': 'what runs in the browser must not reach the database or a use case',
  'lib/calc': 'calculations stand alone, so that each can be read beside its source and run anywhere',
  'lib/words': 'words are loaded everywhere and bring nothing with them',
  'lib/db': 'the database knows nothing of what is done with it',
  'lib/documents': 'what was frozen must not change with anything that lives',
  seed: 'the invented bakery is made by the same commands as a real one',
  eslint: 'the rules must load before anything of ours does',
}

/** Rule: imports go one way between the folders; what may be imported is looked up by where a file lies on disk. */
export const importDirections = {
  meta: { type: 'problem', schema: [], docs: { description: 'imports go one way between the folders' } },
  create(context) {
    const file = path.relative(root, context.filename).split(path.sep).join('/')
    const zone = zoneOf(file)
    if (!zone) return {}
    const rule = special.find(({ is }) => is(file))?.may ?? directions[zone]
    if (!rule) {
      return {
        Program: (node) =>
          context.report({
            node,
            message: `${zone} has no direction yet: say in eslint/import-directions.mjs what it may import.`,
          }),
      }
    }
    const check = (node) => {
      if (typeof node?.value !== 'string') return
      const fault = faultOf(file, zone, rule, node.value)
      if (fault) context.report({ node, message: fault })
    }
    return {
      ImportDeclaration: (node) => check(node.source),
      ExportNamedDeclaration: (node) => check(node.source),
      ExportAllDeclaration: (node) => check(node.source),
      ImportExpression: (node) => check(node.source),
      TSImportType: (node) => check(node.source),
      TSExternalModuleReference: (node) => check(node.expression),
    }
  },
}

function faultOf(file, zone, rule, wanted) {
  const target = ownFile(file, wanted)
  if (target === undefined) {
    const name = wanted.startsWith('@') ? wanted.split('/').slice(0, 2).join('/') : wanted.split('/')[0]
    if (rule.packages === 'all' || rule.packages.includes(name)) return undefined
    return `${zoneWord(file, zone, rule)} may not import the package ${name}: ${rule.alone ? 'input schemas are shared by form, tablet and server' : reason[zone]}.`
  }
  if (rule.ours === 'all') return undefined
  const targetZone = zoneOf(target)
  const isInput = /\.input(\.ts)?$/.test(target)
  if (!rule.alone && targetZone === zone) return faultOfRooms(file, target)
  if (targetZone && rule.ours.includes(targetZone)) return undefined
  if (isInput && rule.ours.includes('*.input')) return undefined
  if (zone === 'lib/auth' && targetZone === 'lib/auth') return undefined
  return `${zoneWord(file, zone, rule)} may not import ${targetZone ?? target}: ${rule.alone ? 'input schemas are shared by form, tablet and server' : reason[zone]}.`
}

/** What is wrong between two rooms of one folder, where it has rooms. */
function faultOfRooms(file, target) {
  const [from, to] = [roomOf(file), roomOf(target)]
  if (from === undefined || to === undefined || from === to || roomLists.includes(file.replace(/\.ts$/, '')))
    return undefined
  if (rooms[from] === undefined)
    return `lib/kitchen/${from} has no direction yet: say in eslint/import-directions.mjs what it may import.`
  if (rooms[from].includes(to)) return undefined
  return `lib/kitchen/${from} may not import lib/kitchen/${to}: what is made comes before what is made of it.`
}

function roomOf(file) {
  const [top, folder, room, name] = file.split('/')
  return top === 'lib' && folder === 'kitchen' && name !== undefined ? room : undefined
}

function zoneWord(file, zone, rule) {
  return rule.alone ? 'A file *.input.ts' : zone
}

/** Path from the root of what is imported, or undefined when it is a package. */
function ownFile(file, wanted) {
  if (wanted.startsWith('@/')) return wanted.slice(2)
  if (wanted.startsWith('.')) return path.posix.normalize(path.posix.join(path.posix.dirname(file), wanted))
  return undefined
}

/** The folder whose rules hold: a folder of lib/, or one at the top. Files at the top itself have none. */
function zoneOf(file) {
  const [top, second] = file.split('/')
  if (file.startsWith('..') || second === undefined) return undefined
  if (
    top === 'lib' &&
    fs.existsSync(path.join(root, 'lib', second)) &&
    fs.statSync(path.join(root, 'lib', second)).isDirectory()
  )
    return `lib/${second}`
  return top === 'lib' ? 'lib' : top
}
