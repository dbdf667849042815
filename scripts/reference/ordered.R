# Ordered answers with random judges and other links, by clm and clmm of the package ordinal. Run where the file shall lie:
#   cd test/check-values/statistics && Rscript ../../../scripts/reference/ordered.R
suppressMessages({library(ordinal); library(jsonlite)})
rows <- function(s) lapply(seq_len(nrow(s)), function(i) list(term = rownames(s)[i], estimate = s[i, 1], standardError = s[i, 2]))
base <- function(id, d, f, judge = NULL) list(id = id, answers = as.character(d[[all.vars(f)[1]]]), levels = I(levels(d[[all.vars(f)[1]]])),
  terms = I(attr(terms(nobars <- as.formula(gsub("\\+ \\(1 \\|.*\\)", "", deparse1(f)))), "term.labels")),
  factors = lapply(Filter(is.factor, d[setdiff(all.vars(f)[-1], judge)]), levels),
  columns = lapply(as.list(d[setdiff(all.vars(f)[-1], judge)]), as.character), judges = if (!is.null(judge)) as.character(d[[judge]]))
# clmm stops its inner search early (log-likelihoods are right to 1e-5), so that its answer is carried to the top here: the mode of each
# judge by Newton's method, the second derivative by hand, thresholds and coefficients by `nlm`, standard errors by numDeriv.
laplace <- function(par, Y, X, judge, J, p, k) {
  th <- c(-Inf, par[seq_len(J - 1)], Inf); if (any(diff(th) <= 0)) return(1e10)
  eta <- drop(X %*% par[J - 1 + seq_len(p)]); tau <- exp(par[J + p])
  -sum(sapply(split(seq_along(Y), judge), function(i) {
    h <- function(u) { lo <- th[Y[i]] - eta[i] - tau * u; hi <- th[Y[i] + 1] - eta[i] - tau * u; sum(log(k$F(hi) - k$F(lo))) - u^2 / 2 }
    u <- optimize(h, c(-6, 6), maximum = TRUE)$maximum
    for (step in 1:8) {
      lo <- th[Y[i]] - eta[i] - tau * u; hi <- th[Y[i] + 1] - eta[i] - tau * u; P <- k$F(hi) - k$F(lo)
      d1 <- (k$f(hi) - k$f(lo)) / P; u <- u + (-tau * sum(d1) - u) / (1 - tau^2 * sum((k$g(hi) - k$g(lo)) / P - d1^2))
    }
    lo <- th[Y[i]] - eta[i] - tau * u; hi <- th[Y[i] + 1] - eta[i] - tau * u
    P <- k$F(hi) - k$F(lo); d1 <- k$f(hi) - k$f(lo); d2 <- k$g(hi) - k$g(lo)
    h(u) - log(1 - tau^2 * sum(d2 / P - (d1 / P)^2)) / 2
  }))
}
kinds <- list(logit = list(F = plogis, f = dlogis, g = function(x) ifelse(is.finite(x), dlogis(x) * (1 - 2 * plogis(x)), 0)),
  probit = list(F = pnorm, f = dnorm, g = function(x) ifelse(is.finite(x), -x * dnorm(x), 0)))
judged <- function(id, d, f, judge, link = "logit") {
  fit <- clmm(f, data = d, link = link); b <- base(id, d, f, judge); J <- length(b$levels); n <- length(coef(fit))
  X <- model.matrix(as.formula(paste("~", paste(b$terms, collapse = "+"))), d)[, -1, drop = FALSE]
  args <- list(Y = as.integer(d[[all.vars(f)[1]]]), X = X, judge = d[[judge]], J = J, p = ncol(X), k = kinds[[link]])
  g <- function(par) do.call(laplace, c(list(par), args))
  top <- nlm(g, c(coef(fit), log(unlist(fit$ST))), gradtol = 1e-10, steptol = 1e-12, iterlim = 500)
  stopifnot(max(abs(top$estimate[seq_len(n)] - coef(fit))) < 2e-2, abs(-top$minimum - logLik(fit)) < 1e-4)
  se <- sqrt(diag(solve(numDeriv::hessian(g, top$estimate))))
  c(b, list(link = link, expected = list(coefficients = rows(cbind(setNames(top$estimate[seq_len(n)], names(coef(fit))), se[seq_len(n)])),
    judgeDeviation = exp(top$estimate[n + 1]), logLikelihood = -top$minimum)))
}
plain <- function(id, d, f, link) {
  fit <- clm(f, data = d, link = link, control = clm.control(gradTol = 1e-9))
  c(base(id, d, f), list(link = link, expected = list(coefficients = rows(coef(summary(fit))), logLikelihood = as.numeric(logLik(fit)))))
}
w <- wine[, c("rating", "temp", "contact", "judge")]
set.seed(5)
d <- expand.grid(judge = factor(paste0("j", 1:5)), patch = factor(1:12)); d$recipe <- factor(c("a", "b", "c")[1 + as.integer(d$patch) %% 3])
y <- 0.8 * (d$recipe == "b") + 1.2 * rnorm(5)[as.integer(d$judge)] + rlogis(60)
d$mark <- factor(cut(y, c(-Inf, -1, 0.5, 2, Inf), labels = c("none", "slight", "plain", "strong")), ordered = TRUE)
d <- d[-c(4, 9, 33), ]
cases <- list(judged("wine, judges random", w, rating ~ temp + contact + (1 | judge), "judge"),
  judged("wine, judges random, probit", w, rating ~ temp + contact + (1 | judge), "judge", "probit"),
  judged("marks, unbalanced", d, mark ~ recipe + (1 | judge), "judge"),
  plain("wine, cloglog", w, rating ~ temp + contact, "cloglog"), plain("marks, interaction-free", d, mark ~ recipe, "logit"))
writeLines(toJSON(list(source = paste("R", getRversion(), "ordinal", packageVersion("ordinal")), script = "scripts/reference/ordered.R", cases = cases),
  auto_unbox = TRUE, digits = I(12), null = "null"), "ordered-clmm.json")
