const errorLevel = 50

/**
 * Makes log lines of what a process says: a line that is a JSON object goes on as it is; anything else that it says at one
 * time (a warning, a stack over many lines) becomes one JSON line of the same form, so that whoever reads the log can take it
 * line by line. Passwords in addresses are left out.
 * @param say is given each line, without its end
 * @param others whether what is no JSON is kept so, or dropped
 * @param now for the time of a line that had none
 */
export function logLines(
  say: (line: string) => void,
  others: 'kept' | 'dropped',
  now: () => Date = () => new Date(),
): { take(chunk: string): void; end(): void } {
  let rest = ''
  const wrap = (lines: readonly string[]) => {
    if (others === 'dropped') return
    const text = lines
      .join('\n')
      .replace(/(postgres(?:ql)?:\/\/[^\s:@/]*):[^\s@/]*@/g, '$1:…@')
      .trim()
    if (text !== '') say(JSON.stringify({ level: errorLevel, time: now().toISOString(), event: 'app-said', text }))
  }
  const takeLines = (lines: readonly string[]) => {
    let other: string[] = []
    for (const line of lines) {
      if (!isObject(line)) {
        other.push(line)
        continue
      }
      wrap(other)
      other = []
      say(line)
    }
    wrap(other)
  }
  return {
    take(chunk) {
      const lines = (rest + chunk).split('\n')
      rest = lines.pop() ?? ''
      takeLines(lines)
    },
    end() {
      takeLines([rest])
      rest = ''
    },
  }
}

function isObject(line: string): boolean {
  if (!line.startsWith('{')) return false
  try {
    return typeof JSON.parse(line) === 'object'
  } catch {
    return false
  }
}
