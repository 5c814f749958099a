// An example for a scale or a script: lines from standard input become readings in the book. It needs Node alone.
//
//   node lib/ops/send-lines.mjs enrol http://localhost:3000 ABCD-EFGH
//   EVENDOUGH_PIN=… node lib/ops/send-lines.mjs send Esi < lines
//
// A line is a dough's code, a measure, the piece (empty for the whole dough), the value and its unit:
//   712;Dough temperature;;26.4;°C
// What was read lies in station.unsent until the book has named it by id and hash, so that nothing is lost when the
// network is, the book, or this script: start it again and it sends what lies there.
import { createHash, randomBytes } from 'node:crypto'
import fs from 'node:fs'
import readline from 'node:readline'

/** Where the station's secret lies, for its owner alone, and what was not sent. */
const stationFile = process.env.EVENDOUGH_STATION ?? 'station.json'
const unsentFile = stationFile.replace(/(\.json)?$/, '.unsent')
/** What the book refused, one entry a line with its words: for a person to look at. */
const refusedFile = stationFile.replace(/(\.json)?$/, '.refused')
const pauseMs = 5_000

class BookSaysNo extends Error {}

async function ask(station, path, { token, body } = {}) {
  const response = await fetch(`${station.url}/api/v1/${path}`, {
    method: body ? 'POST' : 'GET',
    redirect: 'error',
    headers: {
      ...(body ? { 'Content-Type': 'application/json', Origin: new URL(station.url).origin } : {}),
      ...(station.cookie ? { Cookie: station.cookie } : {}),
      'Evendough-Shift': token ?? '',
    },
    ...(body ? { body: JSON.stringify(body) } : {}),
  })
  return { status: response.status, headers: response.headers, body: await response.json() }
}

/** The answer where the book took it. @throws BookSaysNo with its words */
async function askGood(...question) {
  const answer = await ask(...question)
  if (answer.status === 200) return answer
  const { words, problems, refusal } = answer.body
  throw new BookSaysNo(Object.values(problems ?? {})[0] ?? words ?? refusal ?? `The book answers ${answer.status}.`)
}

async function enrol(url, code) {
  const { headers, body } = await askGood({ url }, 'station/enrol', { body: { code } })
  fs.writeFileSync(stationFile, keyOf(url, headers), { mode: 0o600, flag: 'wx' })
  console.log(`Enrolled as ${body.name}. ${stationFile} is its key: whoever has it is this station.`)
}

function keyOf(url, headers) {
  const [cookie] = (headers.get('set-cookie') ?? '').split(';')
  return JSON.stringify({ url, cookie })
}

/** Whole or not at all: a station without its key is none. */
function changeKey(url, headers) {
  const beside = `${stationFile}.new`
  fs.writeFileSync(beside, keyOf(url, headers), { mode: 0o600 })
  fs.renameSync(beside, stationFile)
}

/** Logs a person on by their PIN, and says what is to be read. */
async function begin(station, name) {
  const { people } = (await askGood(station, 'station')).body
  const person = people.find((each) => each.name === name)
  if (!person) throw new BookSaysNo(`${name} has no PIN. Who has: ${people.map((each) => each.name).join(', ')}.`)
  const pin = process.env.EVENDOUGH_PIN ?? ''
  const on = await askGood(station, 'station/log-on', { body: { personId: person.id, pin } })
  // Once a month the station is given another key; the former one is good until the new one is shown.
  if (on.headers.has('set-cookie')) changeKey(station.url, on.headers)
  const { shiftToken } = on.body
  const { doughs } = (await askGood(station, 'station/floor', { token: shiftToken })).body
  return { token: shiftToken, doughs }
}

/** A line as an entry; a fault in words where it is none. */
function entryOf(line, doughs) {
  const [code, measureName, pieceText, value, unit, ...more] = line.split(';').map((part) => part.trim())
  if (!unit || more.length > 0) return { fault: 'has other parts than code;measure;piece;value;unit' }
  const dough = doughs.find((each) => each.code === code)
  const measure = dough?.measures.find((each) => each.name === measureName)
  if (!measure) return { fault: dough ? `no measure ${measureName}` : `no dough ${code} is to be read now` }
  const piece = pieceText === '' ? null : Number(pieceText)
  // A place that was taken here is free no longer, whatever the book has said so far.
  const place = measure.places.find((each) => each.piece === piece && !each.reading && !each.isTaken)
  if (!place) return { fault: 'every reading of that is there' }
  place.isTaken = true
  const { repeat, factorLevel } = place
  const at = { batchId: dough.id, measureId: measure.id, piece, factorLevel, repeat }
  return { entry: { kind: 'reading', id: uuid7(), ...at, value, unit, takenAt: new Date().toISOString() } }
}

/** RFC 9562: the time in ms, then chance. */
function uuid7() {
  const bytes = randomBytes(16)
  bytes.writeUIntBE(Date.now(), 0, 6)
  bytes[6] = (bytes[6] & 0x0f) | 0x70
  bytes[8] = (bytes[8] & 0x3f) | 0x80
  return bytes.toString('hex').replace(/(.{8})(.{4})(.{4})(.{4})(.{12})/, '$1-$2-$3-$4-$5')
}

/** SHA-256 of an entry's canonical text, which the book has to name (RFC 8785: names in order, no spaces). */
function hashOf({ batchId, factorLevel, measureId, piece, repeat, takenAt, unit, value }) {
  const text = JSON.stringify({
    batch: batchId,
    factorLevel,
    format: 1,
    measure: measureId,
    piece,
    reason: null,
    repeat,
    supersedes: null,
    takenAt,
    unit,
    value,
  })
  return createHash('sha256').update(text).digest('hex')
}

function readUnsent() {
  const text = fs.existsSync(unsentFile) ? fs.readFileSync(unsentFile, 'utf8') : ''
  // A line that was cut off when the machine stopped was never told as kept.
  return text.split('\n').flatMap((line) => (line.endsWith('}') ? [JSON.parse(line)] : []))
}

/** On the disk when this returns. */
function writeUnsent(entries) {
  const half = `${unsentFile}.half`
  const file = fs.openSync(half, 'w', 0o600)
  fs.writeSync(file, entries.map((entry) => `${JSON.stringify(entry)}\n`).join(''))
  fs.fsyncSync(file)
  fs.closeSync(file)
  fs.renameSync(half, unsentFile)
}

/** Sends what lies here, the oldest first, and lets go of what the book named or refused. */
async function sendUnsent(station, token) {
  for (;;) {
    const entries = readUnsent()
    if (entries.length === 0) return
    const sent = entries.slice(0, 100)
    const { status, body } = await ask(station, 'entries', { token, body: { entries: sent } })
    if (!Array.isArray(body.entries)) throw new BookSaysNo(body.words ?? body.refusal ?? `The book answers ${status}.`)
    const over = new Set()
    for (const [at, { id, outcome, hash, refusal, words }] of body.entries.entries()) {
      const entry = sent[at]
      if (outcome === 'refused') {
        if (refusal === 'not-allowed') continue
        fs.appendFileSync(refusedFile, `${JSON.stringify({ ...entry, refusal, words })}\n`, {
          mode: 0o600,
          flush: true,
        })
        console.error(`refused: ${entry.value} ${entry.unit}: ${words} It lies in ${refusedFile}.`)
        process.exitCode = 1
      } else if (id !== entry.id || hash !== hashOf(entry)) continue
      else console.log(`${outcome}: ${entry.value} ${entry.unit}${words ? ` (${words})` : ''}`)
      over.add(entry.id)
    }
    if (over.size === 0) throw new BookSaysNo('The book named nothing of what was sent.')
    writeUnsent(entries.filter(({ id }) => !over.has(id)))
  }
}

async function send(name) {
  const station = JSON.parse(fs.readFileSync(stationFile, 'utf8'))
  const { token, doughs } = await begin(station, name)
  await sendUnsent(station, token)
  let fault = null
  for await (const line of readline.createInterface({ input: process.stdin })) {
    if (line.trim() === '') continue
    const { entry, fault: wrong } = entryOf(line, doughs)
    if (!entry) {
      console.error(`not kept: ${line}: ${wrong}`)
      process.exitCode = 1
      continue
    }
    writeUnsent([...readUnsent(), entry])
    // What does not go now goes with the next line, or at the end.
    fault = await sendUnsent(station, token).catch((error) => error)
  }
  if (fault && !(fault instanceof BookSaysNo)) {
    await new Promise((resolve) => setTimeout(resolve, pauseMs))
    await sendUnsent(station, token)
  } else if (fault) throw fault
}

const [what, ...given] = process.argv.slice(2)
const works = { enrol: [enrol, 2], send: [send, 1] }
const [work, wanted] = Object.hasOwn(works, what ?? '') ? works[what] : []
if (!work || given.length !== wanted) {
  console.error('node lib/ops/send-lines.mjs enrol <address> <code>, or: send <name> < lines')
  process.exit(2)
}
try {
  await work(...given)
} catch (error) {
  const left = readUnsent().length
  console.error(error instanceof BookSaysNo ? error.message : `The book does not answer (${error.message}).`)
  if (left > 0) console.error(`${left} not sent: they lie in ${unsentFile}. Run this again.`)
  process.exit(1)
}
