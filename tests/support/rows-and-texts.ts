import { chainStart } from '@/lib/db/append-audit'
import { db } from '@/lib/db/client'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import type { AuditEntryContent } from '@/lib/documents/audit-entry/text-of-audit-entry'
import { readEvidence } from '@/lib/documents/evidence/read-evidence'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readPlan } from '@/lib/documents/plan/read-plan'
import { textOfReading } from '@/lib/documents/reading/text-of-reading.input'
import { readVersionContent } from '@/lib/documents/version-content/read-version-content'
import { sealsOf } from '@/lib/kitchen/results/judge-readings'

/** What rows and a text say of the same, side by side: whoever compares them is shown where they part. */
export type SaidTwice = { of: string; byRows: unknown; byText: unknown }

/** What a kept text says; a test in which one cannot be read has failed. */
function mustBeRead<Read extends { outcome: string }>(read: Read): Extract<Read, { outcome: 'read' }> {
  if (read.outcome !== 'read') throw new Error(read.outcome)
  return read as Extract<Read, { outcome: 'read' }>
}

/** Every trial that has a plan: what was declared, its doughs with their doses and masses, its days and batches. */
export async function plansTwice(): Promise<SaidTwice[]> {
  const trials = await db().trial.findMany({
    where: { planText: { not: null } },
    include: {
      arms: {
        include: { doses: { orderBy: { position: 'asc' } }, lines: { orderBy: { position: 'asc' } } },
        orderBy: { position: 'asc' },
      },
      mixDays: { orderBy: { number: 'asc' } },
      batches: {
        where: { kind: 'dough' },
        include: { arm: true, mixingDay: true },
        orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
      },
      lines: { orderBy: [{ stageKind: 'asc' }, { ingredientId: 'asc' }] },
      controlVersion: { include: { stages: { orderBy: { position: 'asc' } } } },
      formula: true,
      decisions: true,
    },
  })
  return trials.map((trial) => {
    const { plan } = mustBeRead(readPlan(trial.planText!, trial.planHash!))
    const { declared, process, order } = plan
    const version = trial.controlVersion
    return {
      of: `trial ${trial.number}`,
      byRows: {
        declared: {
          bakery: trial.bakeryId,
          trial: trial.id,
          number: trial.number,
          kind: trial.kind,
          question: trial.question,
          note: trial.note,
          formula: { id: trial.formula.id, name: trial.formula.name },
          controlVersion: { id: version.id, number: version.number, contentHash: version.contentHash },
          measure: trial.measureId,
          margin: trial.margin,
          marginUnit: trial.marginUnit,
          confidencePct: trial.confidencePct,
          holdsFor: trial.holdsFor,
          blinded: trial.blinded,
          mixingDays: trial.mixingDays,
          batchesPerArm: trial.batchesPerArm,
          piecesPerBatch: trial.piecesPerBatch,
          factor: trial.factorName === null ? undefined : { name: trial.factorName, levels: trial.factorLevels },
          heldTotals: trial.heldTotals,
          flourTempC: trial.flourTempC,
          roomTempC: trial.roomTempC,
          tapTempC: trial.tapTempC ?? declared.tapTempC,
        },
        process: [
          version.scalingMassG,
          version.doughLossPct,
          version.doughTempC,
          version.mixTimeS,
          version.bulkTimeS,
          version.proofTimeS,
          version.bakeTempC,
          version.bakeTimeS,
        ],
        stages: version.stages.map(({ id, kind, name }) => ({ id, kind, name })),
        scale: trial.scaleId,
        mixer: trial.mixerId,
        choices: trial.lines.map(({ stageKind, ingredientId, mayMove, scaleId }) => ({
          stageKind,
          ingredientId,
          mayMove,
          scaleId,
        })),
        arms: trial.arms.map((arm) => ({
          name: arm.name,
          onTop: arm.onTop,
          doses: arm.doses.map(({ ingredientId, basis, doseOf, value, how, insteadOfId, equalBy, allOfIt }) => ({
            ingredientId,
            basis,
            doseOf,
            value,
            how,
            insteadOfId,
            equalBy,
            allOfIt,
          })),
          lines: arm.lines.map(({ stageId, ingredientId, controlMassG, massG, weighedG }) => ({
            stageId,
            ingredientId,
            controlG: controlMassG,
            exactG: massG,
            weighedG,
          })),
        })),
        seed: trial.seed,
        days: trial.mixDays.map(({ number }) => number),
        batches: trial.batches.map(({ mixingDay, plannedOrder, arm, code, cleanDownBefore }) => ({
          day: mixingDay.number,
          place: plannedOrder,
          arm: arm.position,
          code,
          cleanDownBefore,
        })),
        decidedOn: trial.decisions.filter(({ verdict }) => verdict !== 'sent_back').map(({ planHash }) => planHash),
      },
      byText: {
        declared: { ...declared, measure: declared.measure.id, factor: declared.factor },
        process: [
          process.scalingMassG,
          process.doughLossPct,
          process.doughTempC,
          process.mixTimeS,
          process.bulkTimeS,
          process.proofTimeS,
          process.bakeTempC,
          process.bakeTimeS,
        ],
        stages: plan.stages,
        scale: plan.scale?.id ?? null,
        mixer: plan.mixer?.id ?? null,
        choices: plan.choices.map(({ ingredient: _, ...choice }) => choice),
        arms: plan.arms.map((arm) => ({
          name: arm.name,
          onTop: arm.onTop,
          doses: arm.doses.map(({ ingredientId, basis, doseOf, value, how, insteadOfId, equalBy, allOfIt }) => ({
            ingredientId,
            basis,
            doseOf,
            value,
            how,
            insteadOfId,
            equalBy,
            allOfIt,
          })),
          lines: arm.lines.map(({ stageId, ingredientId, controlG, exactG, weighedG }) => ({
            stageId,
            ingredientId,
            controlG,
            exactG,
            weighedG,
          })),
        })),
        seed: order?.seed,
        days: Array.from({ length: declared.mixingDays }, (_, i) => i + 1),
        batches: order?.batches.map(({ cleanDownOf, ...batch }) => ({
          ...batch,
          cleanDownBefore: cleanDownOf.length > 0,
        })),
        decidedOn: trial.decisions.filter(({ verdict }) => verdict !== 'sent_back').map(() => trial.planHash),
      },
    }
  })
}

/** Every signed version of a formula, with its stages, lines and the seals of its signatures. */
export async function versionsTwice(): Promise<SaidTwice[]> {
  const versions = await db().formulaVersion.findMany({
    where: { contentText: { not: null } },
    include: {
      formula: true,
      signatures: true,
      decision: { include: { evidence: true } },
      stages: { include: { lines: { orderBy: { position: 'asc' } } }, orderBy: { position: 'asc' } },
    },
  })
  return versions.map((row) => {
    const { content } = mustBeRead(readVersionContent(row.contentText!))
    const { batch, process, version } = content
    return {
      of: `${row.formula.name}, version ${row.number}`,
      byRows: {
        hash: row.contentHash,
        ids: [row.bakeryId, row.formulaId, row.id, row.number, row.fromVersionId, row.draftedById],
        reason: row.reason,
        evidence: row.decision ? { decision: row.decision.id, hash: row.decision.evidence.hash } : undefined,
        figures: [
          row.pieces,
          row.scalingMassG,
          row.doughLossPct,
          row.doughTempC,
          row.mixTimeS,
          row.bulkTimeS,
          row.proofTimeS,
          row.bakeTempC,
          row.bakeTimeS,
        ],
        method: row.method,
        stages: row.stages.map(({ kind, name, lines }) => ({
          kind,
          name,
          lines: lines.map(({ ingredientId, pctFlour }) => [ingredientId, pctFlour]),
        })),
        signed: row.signatures.map(({ contentHash }) => contentHash),
      },
      byText: {
        hash: hashOfText(row.contentText!),
        ids: [content.bakery, content.formula.id, version.id, version.number, version.from, version.draftedBy.id],
        reason: version.reason,
        evidence: content.evidence,
        figures: [
          batch.pieces,
          batch.scalingMassG,
          batch.doughLossPct,
          process.doughTempC,
          process.mixTimeS,
          process.bulkTimeS,
          process.proofTimeS,
          process.bakeTempC,
          process.bakeTimeS,
        ],
        method: process.method,
        stages: content.stages.map(({ kind, name, lines }) => ({
          kind,
          name,
          lines: lines.map(({ ingredient, pctFlour }) => [ingredient.id, pctFlour]),
        })),
        signed: row.signatures.map(() => hashOfText(row.contentText!)),
      },
    }
  })
}

/** Every piece of evidence: of which trial, by whom, of which plan and control, of which doughs and readings, to which nothing may have come since. */
export async function evidenceTwice(): Promise<SaidTwice[]> {
  const kept = await db().evidence.findMany({
    include: {
      frozenBy: true,
      parts: true,
      trial: { include: { formula: true, controlVersion: true, arms: { orderBy: { position: 'asc' } } } },
    },
  })
  return Promise.all(
    kept.map(async (row) => {
      const { trial } = row
      const { evidence } = mustBeRead(readEvidence(row.text, row.hash, row.parts))
      return {
        of: `evidence of trial ${trial.number}`,
        byRows: {
          trial: [
            row.bakeryId,
            trial.id,
            trial.number,
            trial.question,
            trial.state,
            trial.closedAt?.toISOString() ?? null,
            trial.closedWhy,
            trial.planHash,
          ],
          formula: [
            trial.formula.id,
            trial.formula.name,
            trial.controlVersion.id,
            trial.controlVersion.number,
            trial.controlVersion.contentHash,
          ],
          declared: [
            trial.kind,
            trial.margin,
            trial.marginUnit,
            trial.confidencePct,
            trial.mixingDays,
            trial.batchesPerArm,
            trial.piecesPerBatch,
          ],
          arms: trial.arms.map(({ id, position, name }) => [id, position, name]),
          readings: {
            count: await db().reading.count({ where: { trialId: trial.id } }),
            hash: (await sealsOf(db(), row.bakeryId, trial.id)).rowsNow,
            over: 'rows',
          },
          frozen: [row.at.toISOString(), row.frozenById, row.frozenBy.name],
        },
        byText: {
          trial: [
            evidence.bakery,
            evidence.trial.id,
            evidence.trial.number,
            evidence.trial.question,
            evidence.trial.state,
            evidence.trial.closedAt,
            evidence.trial.closedWhy,
            evidence.trial.planHash,
          ],
          formula: [
            evidence.trial.formula.id,
            evidence.trial.formula.name,
            evidence.trial.controlVersion.id,
            evidence.trial.controlVersion.number,
            evidence.trial.controlVersion.contentHash,
          ],
          declared: [
            evidence.declared.kind,
            evidence.declared.margin,
            evidence.declared.marginUnit,
            evidence.declared.confidencePct,
            evidence.declared.mixingDays,
            evidence.declared.batchesPerArm,
            evidence.declared.piecesPerBatch,
          ],
          arms: evidence.arms.map(({ id, arm, name }) => [id, arm, name]),
          readings: evidence.readings,
          frozen: [evidence.frozen.at, evidence.frozen.by.id, evidence.frozen.by.name],
        },
      }
    }),
  )
}

/** Every entry of the record beside its columns, and after the one before it. */
export async function entriesTwice(): Promise<SaidTwice[]> {
  const entries = await db().auditEntry.findMany({ orderBy: [{ bakeryId: 'asc' }, { number: 'asc' }] })
  return entries.map((row, i) => {
    const { entry } = mustBeRead(readAuditEntry(row.entryText))
    return {
      of: `entry ${row.number}`,
      byRows: [
        row.bakeryId,
        row.number.toString(),
        row.at.toISOString(),
        row.by,
        row.personId,
        row.action,
        row.targetId,
        row.previousHash,
        row.hash,
      ],
      byText: [
        entry.bakery,
        entry.number,
        entry.at,
        entry.who?.kind ?? null,
        personOf(entry.who),
        entry.action,
        entry.target,
        entries[i - 1]?.hash ?? chainStart,
        hashOfText(row.entryText),
      ],
    }
  })
}

function personOf(who: AuditEntryContent['who']): string | null {
  if (who?.kind === 'station') return who.person?.person ?? null
  return who?.kind === 'desk' ? who.person : null
}

/** Every reading: its columns, written as what was entered, give the hash that was kept with it. */
export async function readingsTwice(): Promise<SaidTwice[]> {
  const readings = await db().reading.findMany({ orderBy: { id: 'asc' } })
  return readings.map((row) => {
    const isCorrection = row.supersedesId !== null
    const text = textOfReading({
      batch: isCorrection ? null : row.batchId,
      factorLevel: isCorrection ? null : row.factorLevel,
      measure: isCorrection ? null : row.measureId,
      piece: row.piece,
      reason: row.reason,
      repeat: row.repeat,
      supersedes: row.supersedesId,
      takenAt: isCorrection ? null : row.takenAt.toISOString(),
      unit: row.unitEntered,
      value: row.valueEntered,
    })
    return { of: `reading ${row.id}`, byRows: hashOfText(text), byText: row.contentHash }
  })
}
