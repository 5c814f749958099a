-- What a verdict holds for, and who is not to know which dough is which, are declared with the plan.
CREATE TYPE "holds_for" AS ENUM ('any_day', 'these_days');
CREATE TYPE "blind_task" AS ENUM ('weighing', 'baking', 'measuring', 'tasting');

-- Until now a verdict held for any day, and nobody was declared blind.
ALTER TABLE "trial" ADD COLUMN "holds_for" "holds_for" NOT NULL DEFAULT 'any_day';
ALTER TABLE "trial" ALTER COLUMN "holds_for" DROP DEFAULT;
ALTER TABLE "trial" ADD COLUMN "blinded" "blind_task"[];
