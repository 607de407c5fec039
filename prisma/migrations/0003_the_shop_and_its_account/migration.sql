-- The shop and its account: presence, corrections, closed months, lifts and their inspections, other hours, owners, erasure.

CREATE TABLE "shop_zone" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "valid_from" date NOT NULL,
  "zone" text NOT NULL,
  CONSTRAINT "shop_zone_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "hours_exception" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "day" date NOT NULL,
  "person_id" uuid,
  "hours" jsonb NOT NULL,
  "breaks" jsonb NOT NULL,
  "words" text,
  CONSTRAINT "hours_exception_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "hours_exception_shop_id_person_id_idx" ON "hours_exception" ("shop_id", "person_id");

CREATE TABLE "outage" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "bay_id" uuid NOT NULL,
  "equipment" text CHECK ("equipment" IN ('flat', 'twoPostLift', 'fourPostLift', 'scissorLift', 'alignmentRack', 'pit', 'jackAndStands')),
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  "words" text NOT NULL,
  "end_words" text,
  CONSTRAINT "outage_pkey" PRIMARY KEY ("shop_id", "id"),
  CONSTRAINT "outage_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" >= "from_at")
);
CREATE INDEX "outage_shop_id_bay_id_idx" ON "outage" ("shop_id", "bay_id");

CREATE TABLE "lift_inspection" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "bay_id" uuid NOT NULL,
  "inspected_on" date NOT NULL,
  "outcome" text NOT NULL CHECK ("outcome" IN ('passed', 'failed')),
  "interval_months" integer,
  "inspector" text,
  "words" text,
  CONSTRAINT "lift_inspection_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "lift_inspection_shop_id_bay_id_idx" ON "lift_inspection" ("shop_id", "bay_id");

CREATE TABLE "lift_decision" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "bay_id" uuid NOT NULL,
  "inspected_on" date NOT NULL,
  "until_day" date NOT NULL,
  "words" text NOT NULL,
  CONSTRAINT "lift_decision_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "lift_decision_shop_id_bay_id_idx" ON "lift_decision" ("shop_id", "bay_id");
-- An overdue inspection is decided on once.
CREATE UNIQUE INDEX "lift_decision_once" ON "lift_decision" ("shop_id", "bay_id", "inspected_on") WHERE (NOT "void");

CREATE TABLE "owner_change" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "before_id" uuid,
  "after_id" uuid NOT NULL,
  "words" text,
  CONSTRAINT "owner_change_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "owner_change_shop_id_vehicle_id_idx" ON "owner_change" ("shop_id", "vehicle_id");

CREATE TABLE "erasure" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "customer_id" uuid NOT NULL,
  "words" text NOT NULL,
  CONSTRAINT "erasure_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "erasure_shop_id_customer_id_idx" ON "erasure" ("shop_id", "customer_id");

CREATE TABLE "lifting_points" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "words" text NOT NULL,
  CONSTRAINT "lifting_points_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "lifting_points_shop_id_job_id_idx" ON "lifting_points" ("shop_id", "job_id");
CREATE INDEX "lifting_points_shop_id_vehicle_id_idx" ON "lifting_points" ("shop_id", "vehicle_id");

CREATE TABLE "attendance" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "person_id" uuid NOT NULL,
  "kind" text NOT NULL CHECK ("kind" IN ('present', 'break', 'shopTime')),
  "words" text,
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  CONSTRAINT "attendance_pkey" PRIMARY KEY ("shop_id", "id"),
  "during" tstzrange GENERATED ALWAYS AS (tstzrange("from_at", "to_at", '[)')) STORED,
  CONSTRAINT "attendance_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" > "from_at"),
  CONSTRAINT "attendance_once" EXCLUDE USING gist ("shop_id" WITH =, "person_id" WITH =, "during" WITH &&) WHERE (NOT "void") DEFERRABLE INITIALLY IMMEDIATE
);
CREATE INDEX "attendance_shop_id_person_id_from_at_idx" ON "attendance" ("shop_id", "person_id", "from_at");

CREATE TABLE "correction" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "kind" text NOT NULL CHECK ("kind" IN ('replaced', 'added', 'ended', 'struck')),
  "table_name" text NOT NULL CHECK ("table_name" IN ('clock', 'place', 'hold', 'attendance', 'finding', 'attempt', 'odometerReading', 'contactEntry', 'photo', 'caution')),
  "row_id" text,
  "new_row_id" text,
  "before" jsonb,
  "job_id" uuid,
  "vehicle_id" uuid,
  "person_id" uuid,
  "words" text NOT NULL,
  CONSTRAINT "correction_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "correction_shop_id_job_id_idx" ON "correction" ("shop_id", "job_id");
CREATE INDEX "correction_shop_id_vehicle_id_idx" ON "correction" ("shop_id", "vehicle_id");
CREATE INDEX "correction_shop_id_person_id_idx" ON "correction" ("shop_id", "person_id");

CREATE TABLE "closed_month" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "month" text NOT NULL,
  "words" text,
  "reopened_at" timestamptz(3),
  "reopened_by_id" uuid,
  "reopen_words" text,
  CONSTRAINT "closed_month_pkey" PRIMARY KEY ("shop_id", "id")
);
-- A month is closed once at a time.
CREATE UNIQUE INDEX "closed_month_once" ON "closed_month" ("shop_id", "month") WHERE ("reopened_at" IS NULL AND NOT "void");

ALTER TABLE "shop_setting" ADD COLUMN "person_figures_to_leads" boolean NOT NULL DEFAULT false;
ALTER TABLE "shop_setting" ALTER COLUMN "person_figures_to_leads" DROP DEFAULT;
ALTER TABLE "customer" ADD COLUMN "merged_into_id" uuid;
ALTER TABLE "vehicle" ADD COLUMN "merged_into_id" uuid;

ALTER TABLE "shop_zone" ADD CONSTRAINT "shop_zone_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hours_exception" ADD CONSTRAINT "hours_exception_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hours_exception" ADD CONSTRAINT "hours_exception_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "outage" ADD CONSTRAINT "outage_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "outage" ADD CONSTRAINT "outage_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lift_inspection" ADD CONSTRAINT "lift_inspection_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lift_inspection" ADD CONSTRAINT "lift_inspection_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lift_decision" ADD CONSTRAINT "lift_decision_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lift_decision" ADD CONSTRAINT "lift_decision_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "owner_change" ADD CONSTRAINT "owner_change_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "owner_change" ADD CONSTRAINT "owner_change_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "owner_change" ADD CONSTRAINT "owner_change_before_id_fkey" FOREIGN KEY ("shop_id", "before_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "owner_change" ADD CONSTRAINT "owner_change_after_id_fkey" FOREIGN KEY ("shop_id", "after_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "erasure" ADD CONSTRAINT "erasure_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "erasure" ADD CONSTRAINT "erasure_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lifting_points" ADD CONSTRAINT "lifting_points_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lifting_points" ADD CONSTRAINT "lifting_points_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "lifting_points" ADD CONSTRAINT "lifting_points_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attendance" ADD CONSTRAINT "attendance_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attendance" ADD CONSTRAINT "attendance_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "correction" ADD CONSTRAINT "correction_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "correction" ADD CONSTRAINT "correction_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "correction" ADD CONSTRAINT "correction_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "correction" ADD CONSTRAINT "correction_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "closed_month" ADD CONSTRAINT "closed_month_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "closed_month" ADD CONSTRAINT "closed_month_reopened_by_id_fkey" FOREIGN KEY ("shop_id", "reopened_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "customer" ADD CONSTRAINT "customer_merged_into_id_fkey" FOREIGN KEY ("shop_id", "merged_into_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_merged_into_id_fkey" FOREIGN KEY ("shop_id", "merged_into_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['shop_zone', 'hours_exception', 'outage', 'lift_inspection', 'lift_decision', 'owner_change', 'erasure', 'lifting_points', 'attendance', 'correction', 'closed_month'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY shop_wall ON %I AS RESTRICTIVE TO holdfast_app USING (shop_id = (SELECT app.shop_id())) WITH CHECK (shop_id = (SELECT app.shop_id()))', t);
    EXECUTE format('CREATE POLICY staff ON %I TO holdfast_app USING (true) WITH CHECK (true)', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE ON %I TO holdfast_app', t);
  END LOOP;
END $$;

-- Files of existing data, beside the shop's rows until they are accepted or put aside; and who read the log.
CREATE TABLE "import_batch" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "kind" text NOT NULL CHECK ("kind" IN ('customers', 'vehicles', 'followUps')),
  "file_name" text NOT NULL,
  "encoding" text NOT NULL,
  "separator" text NOT NULL,
  "header" jsonb NOT NULL,
  "mapping" jsonb NOT NULL,
  "state" text NOT NULL CHECK ("state" IN ('staged', 'checking', 'checked', 'accepted', 'discarded')),
  "row_count" integer NOT NULL,
  "checked_count" integer NOT NULL,
  "good_count" integer NOT NULL,
  "bad_count" integer NOT NULL,
  "check_id" uuid,
  "uploaded_at" timestamptz(3) NOT NULL,
  "uploaded_by_id" uuid NOT NULL,
  "accepted_at" timestamptz(3),
  "accepted_by_id" uuid,
  CONSTRAINT "import_batch_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "import_batch_shop_id_uploaded_at_idx" ON "import_batch" ("shop_id", "uploaded_at");

-- A row of such a file: its cells, what is wrong with them, and what it would become. `number` as a spreadsheet counts: the header is 1.
CREATE TABLE "import_row" (
  "shop_id" uuid NOT NULL,
  "import_id" uuid NOT NULL,
  "number" integer NOT NULL,
  "cells" jsonb NOT NULL,
  "broken" text,
  "state" text NOT NULL CHECK ("state" IN ('staged', 'good', 'bad')),
  "problems" jsonb NOT NULL,
  "row_id" uuid,
  "vehicle_id" uuid,
  "plate_key" text,
  "vin" text,
  "customer_id" uuid,
  "new_customer" boolean NOT NULL,
  "name_key" text,
  "phone_key" text,
  "contact_id" uuid,
  "made" jsonb,
  CONSTRAINT "import_row_pkey" PRIMARY KEY ("shop_id", "import_id", "number"),
  CONSTRAINT "import_row_import_id_fkey" FOREIGN KEY ("shop_id", "import_id") REFERENCES "import_batch" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);
CREATE INDEX "import_row_shop_id_import_id_state_number_idx" ON "import_row" ("shop_id", "import_id", "state", "number");

CREATE TABLE "audit_read" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "read_at" timestamptz(3) NOT NULL,
  "person_id" uuid NOT NULL,
  "filter" jsonb NOT NULL,
  "form" text NOT NULL CHECK ("form" IN ('page', 'csv', 'jsonl')),
  "entries" integer NOT NULL,
  CONSTRAINT "audit_read_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "audit_read_shop_id_read_at_idx" ON "audit_read" ("shop_id", "read_at");

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['import_batch', 'import_row', 'audit_read'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY shop_wall ON %I AS RESTRICTIVE TO holdfast_app USING (shop_id = (SELECT app.shop_id())) WITH CHECK (shop_id = (SELECT app.shop_id()))', t);
    EXECUTE format('CREATE POLICY staff ON %I TO holdfast_app USING (true) WITH CHECK (true)', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE ON %I TO holdfast_app', t);
  END LOOP;
END $$;
GRANT DELETE ON "import_row" TO holdfast_app;
-- Who read the log is written once.
REVOKE UPDATE ON "audit_read" FROM holdfast_app;
