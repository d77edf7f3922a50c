package thudbook.recipes;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.recipes.PredictionStore.Marked;
import thudbook.recipes.PredictionStore.Remade;

/**
 * Remakes the predictions that no longer follow from what is stored, in threads of its own. It
 * predicts outside any transaction and keeps what it has in batches, so that it neither holds up a
 * save nor writes over one. When the process is killed the marks stay, and the next start goes on.
 */
public final class Repredictions implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Repredictions.class);
  private static final int BATCH = 100;

  /** More would leave nothing for what people ask meanwhile. */
  private static final int MOST_THREADS = 4;

  private static final int IDLE_SECONDS = 10;

  private final PredictionStore store;
  private final Things<Gate> studio;
  private final int modelVersion;
  private final Function<Sound, Prediction> model;
  private final Thread worker;
  private final int threads = Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());
  private final ThreadPoolExecutor predicting;
  private final Semaphore wanted = new Semaphore(1);
  private volatile boolean stopping;

  /** Remakes what another version of the model than the present one has made. */
  public Repredictions(PredictionStore store, Things<Gate> studio) {
    this(store, studio, Predictor.MODEL_VERSION, Predictor::predict);
  }

  Repredictions(
      PredictionStore store,
      Things<Gate> studio,
      int modelVersion,
      Function<Sound, Prediction> model) {
    this.store = store;
    this.studio = studio;
    this.modelVersion = modelVersion;
    this.model = model;
    this.worker = new Thread(this::work, "repredictions");
    worker.setDaemon(true);
    this.predicting =
        new ThreadPoolExecutor(
            threads,
            threads,
            IDLE_SECONDS,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            Repredictions::helper);
    predicting.allowCoreThreadTimeOut(true);
  }

  private static Thread helper(Runnable work) {
    Thread thread = new Thread(work, "predicting");
    thread.setDaemon(true);
    return thread;
  }

  /** Begins, and returns at once. */
  public void start() {
    worker.start();
  }

  /** Remakes what has been marked by now; returns at once. */
  public void wake() {
    wanted.release();
  }

  private void work() {
    boolean first = true;
    while (!stopping) {
      wanted.acquireUninterruptibly();
      wanted.drainPermits();
      try {
        int kept = first ? remakeAll() : remakeMarked();
        first = false;
        if (kept > 0) {
          LOG.info("{} predictions were remade", kept);
        }
      } catch (RuntimeException e) {
        // What is marked stays marked: the next change of a gate, or the next start, tries again.
        LOG.error("Predictions could not be remade", e);
      }
    }
  }

  /** Keeps what is ready, leaves the rest marked and waits for the thread to end. */
  @Override
  public void close() {
    stopping = true;
    wake();
    try {
      worker.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    predicting.shutdown();
  }

  /**
   * Remakes what another version of the model has made and everything else that is marked, and
   * returns how many predictions it kept.
   */
  int remakeAll() {
    int marked = store.markOthers(modelVersion);
    if (marked > 0) {
      LOG.info("The model has changed: {} predictions are being remade", marked);
    }
    return remakeMarked();
  }

  private int remakeMarked() {
    int kept = 0;
    long after = 0;
    boolean overtaken = false;
    while (!stopping) {
      List<Marked> batch = store.marked(after, BATCH);
      if (batch.isEmpty()) {
        if (!overtaken) {
          break;
        }
        // A save came between reading and keeping: what it marked is done in another round.
        overtaken = false;
        after = 0;
        continue;
      }
      List<Remade> remade = remake(batch);
      int keptNow = store.keep(remade, modelVersion);
      overtaken |= keptNow < remade.size();
      kept += keptNow;
      after = batch.get(batch.size() - 1).key();
    }
    return kept;
  }

  private List<Remade> remake(List<Marked> batch) {
    Queue<Marked> waiting = new ConcurrentLinkedQueue<>(batch);
    try {
      List<Remade> remade = new ArrayList<>();
      Callable<List<Remade>> some = () -> remakeSome(waiting);
      for (Future<List<Remade>> part : predicting.invokeAll(Collections.nCopies(threads, some))) {
        remade.addAll(part.get());
      }
      return remade;
    } catch (InterruptedException e) {
      stopping = true;
      return List.of();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  /** Takes one after the other until none is left. */
  private List<Remade> remakeSome(Queue<Marked> waiting) {
    // The gates are read after the marks: a gate that is saved from now on marks its recipes again.
    Things<Gate> gates = new KnownGates(studio, List.of());
    List<Remade> remade = new ArrayList<>();
    for (Marked marked = waiting.poll(); marked != null && !stopping; marked = waiting.poll()) {
      try {
        Prediction prediction = predict(marked.recipe().get(), gates);
        remade.add(new Remade(marked.key(), marked.generation(), prediction));
      } catch (RuntimeException e) {
        // One recipe that can't be computed must not keep the others from being remade.
        LOG.error("The prediction of recipe {} failed; it stays marked", marked.key(), e);
      }
    }
    return remade;
  }

  private @Nullable Prediction predict(Recipe recipe, Things<Gate> gates) {
    return Resolution.of(recipe, gates).complete().map(model).orElse(null);
  }
}
