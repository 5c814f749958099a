-- How often a file beside the data folder was started with: where the two do not agree, the database was put back from a copy.
CREATE TABLE "start_mark" (
    "id" UUID NOT NULL,
    "starts" INTEGER NOT NULL,

    CONSTRAINT "start_mark_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "start_mark_starts" CHECK ("starts" > 0)
);
