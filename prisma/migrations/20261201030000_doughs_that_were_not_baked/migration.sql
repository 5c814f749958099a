-- A dough that was never begun cannot be lost: it was not baked. Alone, because a new value is used after its commit only.
-- AlterEnum
ALTER TYPE "batch_state" ADD VALUE 'not_baked';
