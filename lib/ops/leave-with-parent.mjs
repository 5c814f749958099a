// Preloaded into the app's process: when the process that started it is gone, however it ended, the app ends too.
process.on('disconnect', () => process.exit(0))
process.channel?.unref()
