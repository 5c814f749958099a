# Fits the trial on standard input (arm, block, batch, y; the control is arm 0) by REML and compares its arms with the
# control by Dunnett's method, over and over; prints the median in ms. Ends with status 3 where a package is missing.
needed <- c("lme4", "multcomp")
if (!all(vapply(needed, requireNamespace, logical(1), quietly = TRUE))) quit(status = 3)
suppressPackageStartupMessages({ library(lme4); library(multcomp) })
trial <- read.csv(file("stdin"), colClasses = c("factor", "factor", "factor", "numeric"))
once <- function() {
  fit <- lmer(y ~ arm + block + (1 | batch), data = trial, REML = TRUE)
  compared <- glht(fit, linfct = mcp(arm = "Dunnett"))
  list(summary(compared), confint(compared))
}
invisible(once())
times <- replicate(11, system.time(once(), gcFirst = FALSE)[["elapsed"]])
cat(1000 * median(times), "\n")
