# Mixed models by lme4 with Kenward and Roger's degrees of freedom by lmerTest and pbkrtest, on the data sets of lme4 and
# two made here: unbalanced, crossed, and with a variance of exactly 0. Run where the file shall lie:
#   cd test/check-values/statistics && Rscript ../../../scripts/reference/mixed.R
suppressMessages({library(lme4); library(lmerTest); library(jsonlite)})
one <- function(id, d, f, random, reml = TRUE) {
  ctl <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10), calc.derivs = FALSE)
  fit <- suppressMessages(lmerTest::lmer(f, data = d, REML = reml, control = ctl))
  s <- coef(summary(fit, ddf = if (reml) "Kenward-Roger" else "Satterthwaite"))
  plain <- sqrt(diag(as.matrix(vcov(fit)))); vc <- as.data.frame(VarCorr(fit))
  fixed <- lapply(seq_len(nrow(s)), function(i) c(list(term = rownames(s)[i], estimate = s[i, 1], standardError = unname(plain[i])),
    if (reml) list(adjustedError = s[i, 2], degreesOfFreedom = s[i, 3])))
  names <- all.vars(f); resp <- names[1]
  list(id = id, call = paste0("lmer(", deparse1(f), ", REML = ", reml, ")"), method = if (reml) "reml" else "ml", response = resp,
    terms = I(attr(terms(nobars(f)), "term.labels")), random = I(random),
    factors = lapply(Filter(is.factor, d[names]), levels),
    columns = lapply(as.list(d[names]), function(x) if (is.factor(x)) as.character(x) else x),
    expected = list(fixed = fixed, variances = lapply(seq_len(nrow(vc)), function(i) list(group = vc$grp[i], variance = vc$vcov[i])),
      criterion = unname(if (reml) REMLcrit(fit) else -2 * logLik(fit)[1])))
}
set.seed(20)
boards <- expand.grid(recipe = c("a", "b", "c"), jar = 1:3, board = factor(paste0("b", 1:6)))
boards$jar <- factor(paste0(boards$recipe, boards$jar))
boards$gloss <- round(40 + 4 * (boards$recipe == "b") + 2 * rnorm(9)[as.integer(boards$jar)] + 3 * rnorm(6)[as.integer(boards$board)] + rnorm(54), 2)
lost <- boards[-sample(54, 14), ]
judged <- expand.grid(judge = factor(c("j1", "j2", "j3", "j4")), patch = factor(sprintf("p%02d", 1:16)))
judged$recipe <- factor(c("a", "b")[1 + (as.integer(judged$patch) %% 2)])
judged$mark <- round(5 + (judged$recipe == "b") + 0.8 * rnorm(4)[as.integer(judged$judge)] + 0.7 * rnorm(16)[as.integer(judged$patch)] + 0.5 * rnorm(64), 2)
judged <- judged[-c(3, 17, 40, 41), ]
pst <- Pastes[, c("strength", "batch", "sample")]; ck <- cake[, c("angle", "recipe", "replicate", "temp")]
cases <- list(
  one("Dyestuff2: no variance between batches", as.data.frame(Dyestuff2), Yield ~ 1 + (1 | Batch), "Batch"),
  one("Dyestuff", as.data.frame(Dyestuff), Yield ~ 1 + (1 | Batch), "Batch"),
  one("Penicillin: crossed", as.data.frame(Penicillin), diameter ~ 1 + (1 | plate) + (1 | sample), c("plate", "sample")),
  one("Pastes: nested", pst, strength ~ 1 + (1 | sample) + (1 | batch), c("sample", "batch")),
  one("cake: split plot", transform(ck, temp = as.numeric(temp)), angle ~ recipe * temp + (1 | recipe:replicate), "recipe:replicate"),
  one("Dyestuff by full likelihood", as.data.frame(Dyestuff), Yield ~ 1 + (1 | Batch), "Batch", FALSE),
  one("jars and boards crossed, 14 of 54 patches lost", lost, gloss ~ recipe + (1 | jar) + (1 | board), c("jar", "board")),
  one("judges and patches crossed, 4 of 64 readings lost", judged, mark ~ recipe + (1 | judge) + (1 | patch), c("judge", "patch")))
writeLines(toJSON(list(source = paste("R", getRversion(), "lme4", packageVersion("lme4"), "lmerTest", packageVersion("lmerTest"), "pbkrtest", packageVersion("pbkrtest")),
  script = "scripts/reference/mixed.R", cases = cases), auto_unbox = TRUE, digits = I(12)), "mixed-lme4.json")
