import 'server-only'

/** What the database said, by code and constraint name, never by the words of a message. */
export type DatabaseFault =
  | { kind: 'clash' }
  | { kind: 'unique' | 'foreign-key'; constraint: string }
  | { kind: 'busy' }
  | { kind: 'gone' }
  | { kind: 'other' }

// What node-postgres says itself, of its own connection, comes without a code; these are all its sentences for it.
const goneSentences = new Set([
  'Client has encountered a connection error and is not queryable',
  'Connection terminated unexpectedly',
  'Connection terminated',
  'Client was closed and is not queryable',
])
const busySentences = new Set([
  'timeout exceeded when trying to connect',
  'Connection terminated due to connection timeout',
  'Query read timeout',
])

type Cause = {
  kind?: unknown
  originalCode?: unknown
  code?: unknown
  constraint?: { index?: unknown; fields?: unknown }
}

const clashCodes = new Set(['40001', '40P01', '55P03'])
// No room on the disk, no memory, no connection left, a fault of reading or writing, a transaction ended for idling:
// PostgreSQL's appendix A. Nothing was kept, and the same may work in a while.
const busyCodes = new Set(['57014', '53100', '53200', '53300', '53400', '58030', '25P03', '25P04'])
const goneKinds = new Set(['ConnectionClosed', 'SocketTimeout', 'DatabaseNotReachable'])
const goneCodes = new Set(['57P01', '57P02', '57P03', '08006', '08003', '08000', 'ECONNRESET', 'ECONNREFUSED', 'EPIPE'])

/** Reads an error of Prisma or of its adapter, however deep the cause is wrapped. */
export function readDatabaseFault(error: unknown): DatabaseFault {
  const prismaCode = readString(error, 'code')
  const cause = findCause(error)
  const code = readString(cause, 'originalCode') ?? readString(cause, 'code')
  const kind = readString(cause, 'kind')
  if (prismaCode === 'P2034' || kind === 'TransactionWriteConflict' || (code && clashCodes.has(code)))
    return { kind: 'clash' }
  if (kind === 'UniqueConstraintViolation') return { kind: 'unique', constraint: nameOf(cause) }
  if (kind === 'ForeignKeyConstraintViolation') return { kind: 'foreign-key', constraint: nameOf(cause) }
  // P2024: no connection in time; P2028: the transaction could not be opened or outlived its limit.
  const sentence = error instanceof Error ? error.message : ''
  if (
    prismaCode === 'P2024' ||
    prismaCode === 'P2028' ||
    kind === 'TooManyConnections' ||
    (code && busyCodes.has(code)) ||
    busySentences.has(sentence)
  )
    return { kind: 'busy' }
  if (
    prismaCode === 'P1001' ||
    prismaCode === 'P1017' ||
    (kind && goneKinds.has(kind)) ||
    (code && goneCodes.has(code)) ||
    goneSentences.has(sentence)
  ) {
    return { kind: 'gone' }
  }
  return { kind: 'other' }
}

function findCause(error: unknown): Cause | undefined {
  if (typeof error !== 'object' || error === null) return undefined
  const { meta, cause } = error as { meta?: { driverAdapterError?: { cause?: unknown } }; cause?: unknown }
  const found = meta?.driverAdapterError?.cause ?? cause
  if (typeof found !== 'object' || found === null) return undefined
  return 'kind' in found || 'originalCode' in found ? found : (findCause(found) ?? found)
}

function nameOf(cause: Cause | undefined): string {
  const { index, fields } = cause?.constraint ?? {}
  if (typeof index === 'string') return index
  return Array.isArray(fields) ? fields.join(',') : 'unnamed'
}

function readString(from: unknown, key: string): string | undefined {
  if (typeof from !== 'object' || from === null) return undefined
  const value = (from as Record<string, unknown>)[key]
  return typeof value === 'string' ? value : undefined
}
