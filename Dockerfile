# The app in a container, for compose.yaml. Untried: no container engine was at hand where it was written; the commands
# themselves are those of `npm start`. Proven with this Node.js; `--build-arg NODE_VERSION=…` takes a current LTS.
ARG NODE_VERSION=20.19
FROM node:${NODE_VERSION}-bookworm-slim

# The image's own ordinary user owns what is written: the build, and the data folder with the install's secrets.
RUN mkdir /app /data /anchors && chown node:node /app /data /anchors
USER node
WORKDIR /app
COPY --chown=node:node . .
# Installs the packages of the lock file, generates the database client and builds, as the first start would.
RUN node lib/ops/run-script.mjs build ensureBuilt

ENV EVENDOUGH_DATA=/data EVENDOUGH_ANCHORS=/anchors/anchors.jsonl
VOLUME /data /anchors
# It listens on 127.0.0.1 of the container alone; compose.yaml puts a proxy beside it, in the same network.
CMD ["node", "lib/ops/start.mjs"]
