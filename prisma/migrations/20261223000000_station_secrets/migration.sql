-- The secret that a tablet was given last in place of the one that it came in with; null where it still has that one.
ALTER TABLE station
  ADD COLUMN secret_given_at timestamptz(3),
  ADD COLUMN secret_given_hash text,
  ADD CONSTRAINT station_secret_given_whole CHECK ((secret_given_at IS NULL) = (secret_given_hash IS NULL)),
  ADD CONSTRAINT station_secret_given_is_hash CHECK (secret_given_hash ~ '^[0-9a-f]{64}$');
