import { ArmMark } from '@/lib/ui/arm-mark'
import { armLetter } from '@/lib/kitchen/trials/rules'
import type { Words } from '@/lib/words/words'

/** A dough by its mark, and by its name where there is room: the control, or a test dough. */
export function DoughName({ position, name, text }: { position: number; name?: string; text: Words['trials'] }) {
  const letter = armLetter(position)
  return (
    <span className="inline-flex flex-wrap items-baseline gap-x-2">
      <ArmMark arm={letter} />
      {letter === 'control' ? text.control : name}
    </span>
  )
}
