import { invitePerson } from '../../../lib/kitchen/people/invite-person'
import { callerOf, valueOf } from '../bakery'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'
import { badgeOf, givePin, testPin } from '../stations'

const settings = {
  timeZone: 'Europe/Berlin',
  locale: 'en-GB',
  currency: 'EUR',
  region: 'eu',
  massUnits: 'metric',
  temperatureUnits: 'celsius',
}
const goodPassword = 'rye sours slowly in june'

const count = async ({ look }: WalkContext, sql: string, values: unknown[]) =>
  Number((await look.query<{ n: string }>(sql, values)).rows[0]?.n)

/** A shift baker whom the head baker and the owner may change, and whom no walker is: the second one of the bakery. */
const target = ({ bakery }: WalkContext) => bakery.late.personId

/** Whoever walks in the bakery. */
const walkers = ({ bakery }: WalkContext) => [bakery.owner, bakery.head, bakery.early]

const badgesIn = (context: WalkContext) =>
  count(context, 'SELECT count(*) n FROM badge WHERE bakery_id = $1', [context.bakery.bakeryId])

async function openInvitation({ bakery }: WalkContext) {
  const email = `walk-${bakery.bakeryId}@mill-row.example`
  return valueOf(
    await invitePerson.call(callerOf(bakery.owner.sessionSecret, new Date()), {
      name: 'Walk',
      email,
      role: 'shift_baker',
    }),
  )
}

export const peopleActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/team/actions.ts#invite',
    command: 'people.invite-person',
    right: 'manage-people',
    aim: async (context) => ({
      page: '/team',
      bound: [],
      fields: { name: 'Walk', email: `walk-${context.bakery.bakeryId}@mill-row.example`, role: 'shift_baker' },
      happened: async () =>
        (await count(context, 'SELECT count(*) n FROM invitation WHERE bakery_id = $1', [context.bakery.bakeryId])) ===
        1,
    }),
  },
  {
    action: 'app/(desk)/team/actions.ts#withdraw',
    command: 'people.withdraw-invitation',
    right: 'manage-people',
    async aim(context) {
      await openInvitation(context)
      const { rows } = await context.look.query<{ id: string }>('SELECT id FROM invitation WHERE bakery_id = $1', [
        context.bakery.bakeryId,
      ])
      return {
        page: '/team',
        bound: [rows[0]?.id],
        fields: {},
        happened: async () =>
          (await count(context, 'SELECT count(*) n FROM invitation WHERE bakery_id = $1 AND withdrawn_at IS NOT NULL', [
            context.bakery.bakeryId,
          ])) === 1,
      }
    },
  },
  {
    action: 'app/(desk)/team/people/[personId]/actions.ts#change',
    command: 'people.change-person',
    right: 'manage-people',
    aim: async (context) => ({
      page: `/team/people/${target(context)}`,
      bound: [target(context), 1],
      fields: { name: 'Walked', role: 'shift_baker', works: 'on' },
      happened: async () =>
        (await count(context, `SELECT count(*) n FROM person WHERE bakery_id = $1 AND name = 'Walked'`, [
          context.bakery.bakeryId,
        ])) === 1,
    }),
  },
  {
    action: 'app/(desk)/team/people/[personId]/actions.ts#makeResetLink',
    command: 'people.start-password-reset',
    right: 'manage-people',
    aim: async (context) => ({
      page: `/team/people/${target(context)}`,
      bound: [target(context), 'Lars'],
      fields: { password: '{own}' },
      happened: async () =>
        (await count(context, `SELECT count(*) n FROM invitation WHERE bakery_id = $1 AND purpose = 'reset'`, [
          context.bakery.bakeryId,
        ])) === 1,
    }),
  },
  {
    action: 'app/(desk)/team/people/[personId]/actions.ts#takeAway',
    command: 'people.take-pin-away',
    right: 'manage-people',
    async aim(context) {
      await givePin(context.bakery.late, testPin, new Date())
      return {
        page: `/team/people/${target(context)}`,
        bound: [target(context)],
        fields: {},
        happened: async () =>
          (await count(context, 'SELECT count(*) n FROM pin WHERE bakery_id = $1', [context.bakery.bakeryId])) === 0,
      }
    },
  },
  {
    action: 'app/(desk)/team/people/[personId]/actions.ts#makeBadge',
    command: 'people.make-badge',
    right: 'manage-people',
    async aim(context) {
      await givePin(context.bakery.late, testPin, new Date())
      return {
        page: `/team/people/${target(context)}`,
        bound: [target(context)],
        fields: { password: '{own}' },
        happened: async () => (await badgesIn(context)) === 1,
      }
    },
  },
  {
    action: 'app/(desk)/team/people/[personId]/actions.ts#withdrawBadge',
    command: 'people.withdraw-badge',
    right: 'manage-people',
    async aim(context) {
      await givePin(context.bakery.late, testPin, new Date())
      await badgeOf(context.bakery.late, new Date())
      return {
        page: `/team/people/${target(context)}`,
        bound: [target(context)],
        fields: {},
        happened: async () => (await badgesIn(context)) === 0,
      }
    },
  },
  {
    action: 'app/(desk)/account/actions.ts#makeBadge',
    command: 'people.make-own-badge',
    right: 'own-account',
    async aim(context) {
      for (const person of walkers(context)) await givePin(person, testPin, new Date())
      return {
        page: '/account',
        bound: [],
        fields: { password: '{own}' },
        happened: async () => (await badgesIn(context)) === 1,
      }
    },
  },
  {
    action: 'app/(desk)/account/actions.ts#withdrawBadge',
    command: 'people.withdraw-own-badge',
    right: 'own-account',
    async aim(context) {
      const people = walkers(context)
      for (const person of people) {
        await givePin(person, testPin, new Date())
        await badgeOf(person, new Date())
      }
      return {
        page: '/account',
        bound: [],
        fields: {},
        happened: async () => (await badgesIn(context)) === people.length - 1,
      }
    },
  },
  {
    action: 'app/(desk)/account/actions.ts#keepPin',
    command: 'people.choose-pin',
    right: 'own-account',
    aim: (context) =>
      Promise.resolve({
        page: '/account',
        bound: [],
        fields: { password: '{own}', pin: testPin },
        happened: async () =>
          (await count(context, 'SELECT count(*) n FROM pin WHERE bakery_id = $1', [context.bakery.bakeryId])) === 1,
      }),
  },
  {
    action: 'app/(desk)/team/settings/actions.ts#changeSettings',
    command: 'people.change-settings',
    right: 'change-settings',
    aim: async (context) => ({
      page: '/team/settings',
      bound: [1, 'en-GB'],
      fields: {
        ...settings,
        bakeryName: 'Walked',
        costChangeLimitPct: '2.5',
        dayTurnsAtH: '4',
        stationIdleMin: '20',
        pinLastsH: '6',
      },
      happened: async () =>
        (await count(context, `SELECT count(*) n FROM bakery WHERE bakery_id = $1 AND name = 'Walked'`, [
          context.bakery.bakeryId,
        ])) === 1,
    }),
  },
  {
    action: 'app/(desk)/account/actions.ts#changePassword',
    command: 'people.change-own-password',
    right: 'own-account',
    async aim(context) {
      const hashes = async () =>
        JSON.stringify(
          (
            await context.look.query('SELECT person_id, hash FROM password WHERE bakery_id = $1 ORDER BY 1', [
              context.bakery.bakeryId,
            ])
          ).rows,
        )
      const before = await hashes()
      return {
        page: '/account',
        bound: [],
        fields: { password: '{own}', newPassword: goodPassword },
        happened: async () => (await hashes()) !== before,
      }
    },
  },
  {
    action: 'app/(desk)/account/actions.ts#chooseLanguage',
    command: 'people.choose-language',
    right: 'own-account',
    aim: async (context) => ({
      page: '/account',
      bound: [],
      fields: { language: 'en' },
      happened: async () =>
        (await count(context, `SELECT count(*) n FROM person WHERE bakery_id = $1 AND language = 'en'`, [
          context.bakery.bakeryId,
        ])) === 1,
    }),
  },
  {
    action: 'app/(desk)/account/actions.ts#endOthers',
    command: 'people.end-other-sessions',
    right: 'own-account',
    aim: async (context) => ({
      page: '/account',
      bound: [],
      fields: {},
      happened: async () =>
        (await count(
          context,
          `SELECT count(*) n FROM audit_entry WHERE bakery_id = $1 AND action = 'people.end-other-sessions'`,
          [context.bakery.bakeryId],
        )) === 1,
    }),
  },
  {
    action: 'app/(door)/join/[secret]/actions.ts#join',
    command: 'people.accept-invitation',
    right: 'open',
    async aim(context) {
      const { secret } = await openInvitation(context)
      return {
        page: `/join/${secret}`,
        bound: [secret],
        fields: { password: goodPassword },
        happened: async () =>
          (await count(context, `SELECT count(*) n FROM person WHERE bakery_id = $1 AND name = 'Walk'`, [
            context.bakery.bakeryId,
          ])) === 1,
      }
    },
  },
]

export const peoplePages: readonly PageWalk[] = [
  {
    route: '/account',
    queries: ['people.get-account', 'people.get-desk'],
    right: 'own-account',
    address: () => '/account',
  },
  { route: '/team', queries: ['people.get-team'], right: 'read-work', address: () => '/team' },
  {
    route: '/team/people/[personId]',
    queries: ['people.get-person'],
    right: 'manage-people',
    address: (context) => `/team/people/${target(context)}`,
    named: true,
  },
  {
    route: '/team/record',
    queries: ['audit.compare-anchors', 'audit.list-record', 'audit.verify-record', 'jobs.list-jobs'],
    right: 'read-record',
    address: () => '/team/record',
  },
  {
    route: '/team/settings',
    queries: ['people.get-settings'],
    right: 'change-settings',
    address: () => '/team/settings',
  },
  {
    route: '/join/[secret]',
    queries: ['people.get-invitation'],
    right: 'open',
    address: async (context) => `/join/${(await openInvitation(context)).secret}`,
  },
  { route: '/sign-in', queries: [], right: 'open', address: () => '/sign-in' },
  // A first-run link is good only as long as there is no bakery; its page and action have tests of their own.
  { route: '/set-up/[secret]', queries: ['people.get-first-run'], right: 'open', address: () => '/set-up/guessed' },
]
