import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { lockFolder } from '@/lib/db/folder-lock'

let base: string

beforeEach(() => {
  base = fs.mkdtempSync(path.join(os.tmpdir(), 'ev-lock-'))
})

afterEach(() => {
  vi.unstubAllEnvs()
  fs.rmSync(base, { recursive: true })
})

describe('the lock of a data folder', () => {
  it('holds against a second start that has another TMPDIR, and can be taken again when given back', async () => {
    const [folder, elsewhere] = [path.join(base, 'data'), path.join(base, 'tmp')]
    for (const made of [folder, elsewhere]) fs.mkdirSync(made)
    const giveBack = await lockFolder(folder)
    vi.stubEnv('TMPDIR', elsewhere)
    expect(await lockFolder(folder)).toBe('taken')
    if (giveBack !== 'taken') giveBack()
    const again = await lockFolder(folder)
    expect(again).not.toBe('taken')
    if (again !== 'taken') again()
  })

  it('is one lock by whichever name the folder is reached', async () => {
    fs.mkdirSync(path.join(base, 'data'))
    fs.symlinkSync(path.join(base, 'data'), path.join(base, 'other'))
    const giveBack = await lockFolder(path.join(base, 'data'))
    expect(await lockFolder(path.join(base, 'other'))).toBe('taken')
    if (giveBack !== 'taken') giveBack()
  })

  it('says in words that a path is too long for it', async () => {
    const long = path.join(base, 'x'.repeat(110))
    fs.mkdirSync(long)
    await expect(lockFolder(long)).rejects.toThrow('too long')
  })
})
