import { ScanPicture } from '@/lib/ui/scan-picture'

/** An address as it is typed, and as a camera reads it. */
export function AddressWithCode({
  address,
  code,
  label,
}: {
  address: string
  code: readonly (readonly boolean[])[]
  label: string
}) {
  return (
    <div className="mt-3 flex flex-wrap items-start gap-x-6 gap-y-3">
      <div className="w-margin">
        <ScanPicture rows={code} label={label} />
      </div>
      <p className="text-lead font-bold break-all">{address}</p>
    </div>
  )
}
