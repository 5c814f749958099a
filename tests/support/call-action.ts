import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '..', '..')

type Manifest = { node: Record<string, { filename: string; exportedName: string }> }

/** Every server action of the build, by `file#name`, with the id under which it is called. */
export function builtActions(): Map<string, string> {
  const manifest = JSON.parse(
    fs.readFileSync(path.join(root, '.next', 'server', 'server-reference-manifest.json'), 'utf8'),
  ) as Manifest
  return new Map(
    Object.entries(manifest.node).map(([id, { filename, exportedName }]) => [`${filename}#${exportedName}`, id]),
  )
}

export type ActionCall = {
  url: string
  /** Page on which the action is sent. */
  page: string
  action: string
  /** Arguments before the form's state, as a page binds them. */
  bound: readonly unknown[]
  fields: Readonly<Record<string, string>>
  cookie: string | null
  headers?: Record<string, string>
}

const emptyState = { answers: 0, values: {}, problems: {}, refusal: null, isStale: false, given: null, done: null }

/**
 * Calls a server action over HTTP, as a browser would: the arguments in React's own form, the form's fields under
 * a prefix that the last argument names.
 */
export async function callAction({
  url,
  page,
  action,
  bound,
  fields,
  cookie,
  headers = {},
}: ActionCall): Promise<Response> {
  const id = builtActions().get(action)
  if (!id) throw new Error(`no such action in the build: ${action}`)
  const body = new FormData()
  for (const [name, value] of Object.entries(fields)) body.append(`_1_${name}`, value)
  body.append('0', JSON.stringify([...bound, emptyState, '$K1']))
  return fetch(`${url}${page}`, {
    method: 'POST',
    redirect: 'manual',
    headers: {
      Origin: url,
      'Next-Action': id,
      Accept: 'text/x-component',
      ...(cookie && { Cookie: cookie }),
      ...headers,
    },
    body,
  })
}
