import { v7 as uuid } from 'uuid'
import { addEquipment } from '../../../lib/kitchen/stores/add-equipment'
import { addIngredient } from '../../../lib/kitchen/stores/add-ingredient'
import { takeEntries } from '../../../lib/kitchen/intake/take-entries'
import { receiveLot } from '../../../lib/kitchen/stores/receive-lot'
import { callerOf, valueOf } from '../bakery'
import { lineToWeigh } from './shift'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const units = { locale: 'en-GB', massUnits: 'metric', temperatureUnits: 'celsius' }
const typedIngredient = { name: 'Walked', labelName: 'Walked', kind: 'flour', allergenCheck: 'unknown', note: '' }
const typedScale = { name: 'Walked', resolutionG: '0.1', mostG: '3', note: '' }
const typedMeasure = {
  name: 'Walked',
  unit: 'points',
  digits: '0',
  level: 'piece',
  direction: 'larger',
  plausibleLeast: '0',
  plausibleMost: '10',
  repeats: '1',
  repeatLimit: '',
  method: 'looked at',
}

const happens =
  (
    context: WalkContext,
    table: 'ingredient' | 'equipment' | 'price' | 'measure' | 'lot',
    column: 'name' | 'supplier' | 'code',
  ) =>
  async () => {
    const { rows } = await context.look.query<{ n: string }>(
      `SELECT count(*) n FROM ${table} WHERE bakery_id = $1 AND ${column} = 'Walked'`,
      [context.bakery.bakeryId],
    )
    return Number(rows[0]?.n) === 1
  }

async function plantIngredient({ bakery }: WalkContext): Promise<string> {
  const facts = {
    name: 'Planted flour',
    labelName: 'Wheat flour',
    kind: 'flour',
    active: null,
    customary: null,
    allergens: [],
    allergenCheck: 'unknown',
    dustCaution: true,
    note: '',
    figures: {},
  }
  return valueOf(await addIngredient.call(callerOf(bakery.owner.sessionSecret, new Date()), facts)).ingredientId
}

async function plantLot(context: WalkContext): Promise<{ ingredientId: string; lotId: string }> {
  const ingredientId = await plantIngredient(context)
  const lot = { ingredientId, code: 'P 1', receivedOn: '2026-03-02', bestBefore: null, strength: null, note: '' }
  const caller = callerOf(context.bakery.owner.sessionSecret, new Date())
  return { ingredientId, ...valueOf(await receiveLot.call(caller, lot)) }
}

/** A lot of flour that was said at the bench, and one that was received. */
async function plantSaidLot(context: WalkContext): Promise<{ ingredientId: string; lotId: string; otherId: string }> {
  const { batchId, line } = await lineToWeigh(context)
  const { stageId, ingredientId, part } = line
  const caller = callerOf(context.bakery.owner.sessionSecret, new Date())
  const entry = { kind: 'weighing', id: uuid(), batchId, stageId, ingredientId, part, how: 'weighed', mass: '900' }
  const said = { ...entry, unit: 'g', lots: [{ code: 'S 1' }], takenAt: new Date().toISOString(), confirmed: true }
  valueOf(await takeEntries.call(caller, { entries: [said] }))
  const { rows } = await context.look.query<{ id: string }>('SELECT id FROM lot WHERE said_with_id = $1', [said.id])
  const other = { ingredientId, code: 'P 1', receivedOn: '2026-03-02', bestBefore: null, strength: null, note: '' }
  return { ingredientId, lotId: rows[0]!.id, otherId: valueOf(await receiveLot.call(caller, other)).lotId }
}

const holds = (context: WalkContext, lotId: string, condition: string) => async () =>
  Number(
    (await context.look.query<{ n: string }>(`SELECT count(*) n FROM lot WHERE id = $1 AND ${condition}`, [lotId]))
      .rows[0]?.n,
  ) === 1

async function plantEquipment({ bakery }: WalkContext): Promise<string> {
  const scale = { kind: 'scale', name: 'Planted scale', note: '', resolutionG: 1, mostG: 30_000 }
  return valueOf(await addEquipment.call(callerOf(bakery.owner.sessionSecret, new Date()), scale)).equipmentId
}

export const storesActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/stores/ingredients/new/actions.ts#add',
    command: 'stores.add-ingredient',
    right: 'edit-stores',
    aim: async (context) => ({
      page: '/stores/ingredients/new',
      bound: ['en-GB'],
      fields: typedIngredient,
      happened: happens(context, 'ingredient', 'name'),
    }),
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/change/actions.ts#change',
    command: 'stores.change-ingredient',
    right: 'edit-stores',
    async aim(context) {
      const id = await plantIngredient(context)
      return {
        page: `/stores/ingredients/${id}/change`,
        bound: [id, 1, 'en-GB'],
        fields: { ...typedIngredient, inUse: 'on' },
        happened: happens(context, 'ingredient', 'name'),
      }
    },
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/actions.ts#enter',
    command: 'stores.enter-price',
    right: 'edit-stores',
    async aim(context) {
      const id = await plantIngredient(context)
      const fields = { packMassG: '25', packPrice: '18.75', supplier: 'Walked', holdsFrom: '2026-03-02' }
      return {
        page: `/stores/ingredients/${id}`,
        bound: [id, 'en-GB', 'kg'],
        fields,
        happened: happens(context, 'price', 'supplier'),
      }
    },
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/actions.ts#receive',
    command: 'stores.receive-lot',
    right: 'edit-stores',
    async aim(context) {
      const id = await plantIngredient(context)
      return {
        page: `/stores/ingredients/${id}`,
        bound: [id, 'en-GB'],
        fields: {
          code: 'Walked',
          receivedOn: '2026-03-02',
          bestBefore: '',
          'strength.of': 'Falling number',
          'strength.value': '280',
          'strength.unit': 's',
          note: '',
        },
        happened: happens(context, 'lot', 'code'),
      }
    },
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/actions.ts#end',
    command: 'stores.end-lot',
    right: 'edit-stores',
    async aim(context) {
      const { ingredientId, lotId } = await plantLot(context)
      return {
        page: `/stores/ingredients/${ingredientId}`,
        bound: [],
        fields: { lotId, why: 'used_up' },
        async happened() {
          const { rows } = await context.look.query<{ n: string }>(
            `SELECT count(*) n FROM lot WHERE bakery_id = $1 AND id = $2 AND ended_why = 'used_up'`,
            [context.bakery.bakeryId, lotId],
          )
          return Number(rows[0]?.n) === 1
        },
      }
    },
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/actions.ts#confirm',
    command: 'stores.confirm-lot',
    right: 'edit-stores',
    async aim(context) {
      const { ingredientId, lotId } = await plantSaidLot(context)
      return {
        page: `/stores/ingredients/${ingredientId}`,
        bound: [],
        fields: { lotId, receivedOn: '2026-03-01', bestBefore: '' },
        happened: holds(context, lotId, 'confirmed_at IS NOT NULL'),
      }
    },
  },
  {
    action: 'app/(desk)/stores/ingredients/[ingredientId]/actions.ts#match',
    command: 'stores.match-lot',
    right: 'edit-stores',
    async aim(context) {
      const { ingredientId, lotId, otherId } = await plantSaidLot(context)
      return {
        page: `/stores/ingredients/${ingredientId}`,
        bound: [],
        fields: { lotId, sameAsId: otherId },
        happened: holds(context, lotId, `same_as_id = '${otherId}'`),
      }
    },
  },
  {
    action: 'app/(desk)/stores/equipment/new/actions.ts#add',
    command: 'stores.add-equipment',
    right: 'edit-stores',
    aim: async (context) => ({
      page: '/stores/equipment/new?kind=scale',
      bound: ['scale', units],
      fields: typedScale,
      happened: happens(context, 'equipment', 'name'),
    }),
  },
  {
    action: 'app/(desk)/stores/equipment/[equipmentId]/actions.ts#change',
    command: 'stores.change-equipment',
    right: 'edit-stores',
    async aim(context) {
      const equipmentId = await plantEquipment(context)
      const bound = [{ equipmentId, seenRevision: 1, kind: 'scale' }, units]
      return {
        page: `/stores/equipment/${equipmentId}`,
        bound,
        fields: { ...typedScale, inUse: 'on' },
        happened: happens(context, 'equipment', 'name'),
      }
    },
  },
  {
    action: 'app/(desk)/stores/measures/new/actions.ts#add',
    command: 'stores.add-measure',
    right: 'edit-stores',
    aim: async (context) => ({
      page: '/stores/measures/new',
      bound: ['en-GB'],
      fields: typedMeasure,
      happened: happens(context, 'measure', 'name'),
    }),
  },
]

export const storesPages: readonly PageWalk[] = [
  { route: '/stores', queries: ['stores.list-ingredients'], right: 'read-work', address: () => '/stores' },
  {
    route: '/stores/ingredients/new',
    queries: ['stores.get-form-units'],
    right: 'edit-stores',
    address: () => '/stores/ingredients/new',
  },
  {
    route: '/stores/ingredients/[ingredientId]',
    queries: ['stores.get-ingredient', 'stores.list-lots', 'weighings.list-lots-to-confirm'],
    right: 'read-work',
    address: async (context) => `/stores/ingredients/${await plantIngredient(context)}`,
    named: true,
  },
  {
    route: '/stores/ingredients/[ingredientId]/change',
    queries: ['stores.get-ingredient', 'stores.get-form-units'],
    right: 'edit-stores',
    address: async (context) => `/stores/ingredients/${await plantIngredient(context)}/change`,
    named: true,
  },
  {
    route: '/stores/equipment',
    queries: ['stores.list-equipment'],
    right: 'read-work',
    address: () => '/stores/equipment',
  },
  {
    route: '/stores/equipment/new',
    queries: ['stores.get-form-units'],
    right: 'edit-stores',
    address: () => '/stores/equipment/new?kind=scale',
  },
  {
    route: '/stores/equipment/[equipmentId]',
    queries: ['stores.get-equipment'],
    right: 'read-work',
    address: async (context) => `/stores/equipment/${await plantEquipment(context)}`,
    named: true,
  },
  {
    route: '/stores/measures',
    queries: ['stores.list-measures'],
    right: 'read-work',
    address: () => '/stores/measures',
  },
  {
    route: '/stores/measures/new',
    queries: ['stores.get-form-units'],
    right: 'edit-stores',
    address: () => '/stores/measures/new',
  },
]
